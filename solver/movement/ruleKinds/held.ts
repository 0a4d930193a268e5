/** A point stands at coordinates. */
import { z } from 'zod';
import { pointId } from '../ids.ts';
import type { Known } from '../known.ts';
import { place } from '../quantities.ts';
import { POINTS } from '../references/collections.ts';
import { everyRule } from './common.ts';
import type { RuleKindInDocument } from './kind.ts';

/** The point stands at coordinates. */
export const heldRule = z.looseObject({ kind: z.literal('held'), ...everyRule, point: pointId, at: place });

type HeldRule = Known<z.output<typeof heldRule>>;

/** What the document knows of held places. */
export const heldInDocument: RuleKindInDocument<HeldRule> = {
  stem: 'held',
  names: { point: POINTS },
  number: { field: 'at', measures: 'place' },
  subject: () => undefined,
};
