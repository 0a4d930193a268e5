/** Points at one radius about a centre. */
import { z } from 'zod';
import { pointId } from '../ids.ts';
import type { Known } from '../known.ts';
import { POINTS } from '../references/collections.ts';
import { everyRule } from './common.ts';
import { inAnyOrder, namedIn, type RuleKindInDocument } from './kind.ts';

/** The points stand at one radius about the centre. */
export const sameRadiusRule = z.looseObject({
  kind: z.literal('sameRadius'),
  ...everyRule,
  points: z.array(pointId).min(2).max(1000),
  centre: pointId,
});

type SameRadiusRule = Known<z.output<typeof sameRadiusRule>>;

/** What the document knows of points at one radius. */
export const sameRadiusInDocument: RuleKindInDocument<SameRadiusRule> = {
  stem: 'same-radius',
  names: { points: POINTS, centre: POINTS },
  differ: (rule) => [namedIn(rule, ['centre', 'points'])],
  // Two points at one place have the same radius; a point on the centre has none.
  apart: (rule) => namedIn(rule, ['points']).map((point) => [...namedIn(rule, ['centre']), point]),
  without: withoutPoints,
  subject: ({ kind, points, centre }) => `${kind} ${inAnyOrder(points)} about ${centre}`,
};

/** Points that share a radius can lose one of them. */
function withoutPoints(rule: SameRadiusRule, isGone: (id: string | undefined) => boolean): SameRadiusRule | undefined {
  if (isGone(rule.centre)) return undefined;
  const points = rule.points.filter((id) => !isGone(id));
  if (points.length === rule.points.length) return rule;
  return points.length < 2 ? undefined : { ...rule, points };
}
