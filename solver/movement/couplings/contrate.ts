/** Wheels with axes at a right angle, as the file states them. */
import { z } from 'zod';
import { wheelId } from '../ids.ts';
import type { Known } from '../known.ts';
import { common } from './common.ts';
import type { CouplingFacts } from './couplingFacts.ts';

/** Wheels with axes at a right angle; the first drives. `sense`: whether the second turns the same way, each seen from its own front. */
export const contrateSchema = z.looseObject({
  kind: z.literal('contrate'),
  ...common,
  wheels: z.tuple([wheelId, wheelId]),
  sense: z.enum(['same', 'reversed']).default('reversed'),
});

/** What the document knows of contrate pairs. */
export const contrateFacts: CouplingFacts<'contrate', Known<z.output<typeof contrateSchema>>> = {
  kind: 'contrate',
  parts: ({ wheels }) => wheels,
  meshes: ({ wheels }) => wheels,
  check: ({ wheels: [first, second] }, { ofWheel }, tell) => {
    if (ofWheel(first) === ofWheel(second)) {
      tell(['wheels', 1], `“${second}”, on the axis of “${first}”`, 'a wheel on another axis');
    }
  },
  without: (coupling, gone) => (coupling.wheels.some((id) => gone.has(id)) ? undefined : coupling),
};
