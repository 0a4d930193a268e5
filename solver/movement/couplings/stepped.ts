/** A pin or finger that moves a wheel by a few teeth, as the file states it. */
import { z } from 'zod';
import { arborId, wheelId } from '../ids.ts';
import type { Known } from '../known.ts';
import { common } from './common.ts';
import { arborTurnsWheel, type CouplingFacts } from './couplingFacts.ts';

/** A pin or finger on `arbor` moves `wheel` by `teeth` teeth at each turn. */
export const steppedSchema = z.looseObject({
  kind: z.literal('stepped'),
  ...common,
  arbor: arborId,
  wheel: wheelId,
  teeth: z.int().min(1).max(100).default(1),
});

/** What the document knows of pins and fingers. */
export const steppedFacts: CouplingFacts<'stepped', Known<z.output<typeof steppedSchema>>> = {
  kind: 'stepped',
  ...arborTurnsWheel,
};
