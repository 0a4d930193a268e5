/** The difference of several lengths of one point, shared. */
import { z } from 'zod';
import { pointId, ruleId } from '../ids.ts';
import type { Known } from '../known.ts';
import { POINTS } from '../references/collections.ts';
import { everyRule } from './common.ts';
import { inAnyOrder, type RuleKindInDocument } from './kind.ts';

/** `point` stands where the lengths `among` miss least together: squares of their misses over their ±. */
export const shareDifferenceRule = z.looseObject({
  kind: z.literal('shareDifference'),
  ...everyRule,
  point: pointId,
  among: z.array(ruleId).min(2).max(100),
});

type ShareDifferenceRule = Known<z.output<typeof shareDifferenceRule>>;

/** What the document knows of shared differences. */
export const shareDifferenceInDocument: RuleKindInDocument<ShareDifferenceRule> = {
  stem: 'share',
  names: { point: POINTS, among: ['rules'] },
  apart: () => [],
  without: withoutLengths,
  subject: ({ kind, point, among }) => `${kind} ${point} ${inAnyOrder(among)}`,
};

/** It can lose one of its lengths, as long as two are left. */
function withoutLengths(
  rule: ShareDifferenceRule,
  isGone: (id: string | undefined) => boolean,
): ShareDifferenceRule | undefined {
  if (isGone(rule.point)) return undefined;
  const among = rule.among.filter((id) => !isGone(id));
  if (among.length === rule.among.length) return rule;
  return among.length < 2 ? undefined : { ...rule, among };
}
