/** Two points at one place. */
import { z } from 'zod';
import { pointId } from '../ids.ts';
import type { Known } from '../known.ts';
import { POINTS } from '../references/collections.ts';
import { everyRule } from './common.ts';
import { inAnyOrder, type RuleKindInDocument, type TellFault } from './kind.ts';

/** Two points stand at one place. */
export const samePlaceRule = z.looseObject({
  kind: z.literal('samePlace'),
  ...everyRule,
  points: z.tuple([pointId, pointId]),
});

type SamePlaceRule = Known<z.output<typeof samePlaceRule>>;

/** What the document knows of shared places. */
export const samePlaceInDocument: RuleKindInDocument<SamePlaceRule> = {
  stem: 'same-place',
  names: { points: POINTS },
  apart: () => [],
  faults: hasADuty,
  subject: ({ kind, points }) => `${kind} ${inAnyOrder(points)}`,
  joins: ({ points }) => points,
};

/** What stands at one place is one point: nothing is left of it that could check. */
function hasADuty({ duty }: SamePlaceRule, tell: TellFault): void {
  if (duty === undefined) return;
  tell(['duty'], {
    found: `“${duty}” of a same-place rule`,
    expected: 'no duty: what it joins cannot differ',
    remedy: 'remove “duty”, or leave the rule out',
  });
}
