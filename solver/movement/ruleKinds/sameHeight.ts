/** A point at the height of another, square to the centre line. */
import { z } from 'zod';
import { pointId } from '../ids.ts';
import type { Known } from '../known.ts';
import { POINTS } from '../references/collections.ts';
import { everyRule } from './common.ts';
import { inAnyOrder, type RuleKindInDocument } from './kind.ts';

/** `point` stands at the height of `of`: the line of both runs square to the centre line. */
export const sameHeightRule = z.looseObject({
  kind: z.literal('sameHeight'),
  ...everyRule,
  point: pointId,
  of: pointId,
});

type SameHeightRule = Known<z.output<typeof sameHeightRule>>;

/** What the document knows of points at one height. */
export const sameHeightInDocument: RuleKindInDocument<SameHeightRule> = {
  stem: 'same-height',
  names: { point: POINTS, of: POINTS },
  subject: ({ kind, point, of }) => `${kind} ${inAnyOrder([point, of])}`,
};
