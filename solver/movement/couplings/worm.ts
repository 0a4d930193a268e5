/** A worm, as the file states it. */
import { z } from 'zod';
import { arborId, wheelId } from '../ids.ts';
import type { Known } from '../known.ts';
import { common } from './common.ts';
import { arborTurnsWheel, type CouplingFacts } from './couplingFacts.ts';

/** A worm of `starts` threads on `arbor` turns `wheel`. */
export const wormSchema = z.looseObject({
  kind: z.literal('worm'),
  ...common,
  arbor: arborId,
  starts: z.int().min(1).max(50),
  hand: z.enum(['right', 'left']).default('right'),
  wheel: wheelId,
});

/** What the document knows of worms. */
export const wormFacts: CouplingFacts<'worm', Known<z.output<typeof wormSchema>>> = {
  kind: 'worm',
  ...arborTurnsWheel,
};
