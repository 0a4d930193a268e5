/** Points evenly spaced about a centre. */
import { z } from 'zod';
import { pointId } from '../ids.ts';
import type { Known } from '../known.ts';
import { POINTS } from '../references/collections.ts';
import { everyRule } from './common.ts';
import { inAnyOrder, namedIn, type RuleKindInDocument } from './kind.ts';

/** The points stand evenly about the centre, in the listed order anticlockwise: same radius, equal steps. */
export const evenSpacingRule = z.looseObject({
  kind: z.literal('evenSpacing'),
  ...everyRule,
  points: z.array(pointId).min(2).max(1000),
  centre: pointId,
});

type EvenSpacingRule = Known<z.output<typeof evenSpacingRule>>;

/** What the document knows of even spacings. */
export const evenSpacingInDocument: RuleKindInDocument<EvenSpacingRule> = {
  stem: 'even-spacing',
  names: { points: POINTS, centre: POINTS },
  differ: (rule) => [namedIn(rule, ['centre', 'points'])],
  subject: ({ kind, points, centre }) => `${kind} ${inAnyOrder(points)} about ${centre}`,
};
