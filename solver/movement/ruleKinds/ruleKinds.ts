/**
 * The kinds of rules in the document, and what is asked of them. A kind that the schema has and this table has not does
 * not compile.
 */
import type { PointId } from '../ids.ts';
import type { KindOfRule, Rule, RuleOf } from '../schema.ts';
import { bearingInDocument } from './bearing.ts';
import { clearByInDocument } from './clearBy.ts';
import { depthInDocument } from './depth.ts';
import { distanceInDocument } from './distance.ts';
import { evenSpacingInDocument } from './evenSpacing.ts';
import { heldInDocument } from './held.ts';
import { inLineInDocument } from './inLine.ts';
import type { NumberField, RuleKindInDocument } from './kind.ts';
import { mirroredInDocument } from './mirrored.ts';
import { onCentreLineInDocument } from './onCentreLine.ts';
import { oppositeInDocument } from './opposite.ts';
import { radiusInDocument } from './radius.ts';
import { sameHeightInDocument } from './sameHeight.ts';
import { samePlaceInDocument } from './samePlace.ts';
import { sameRadiusInDocument } from './sameRadius.ts';
import { shareDifferenceInDocument } from './shareDifference.ts';
import { straightAboveInDocument } from './straightAbove.ts';

const RULE_KINDS = {
  held: heldInDocument,
  depth: depthInDocument,
  distance: distanceInDocument,
  radius: radiusInDocument,
  bearing: bearingInDocument,
  opposite: oppositeInDocument,
  samePlace: samePlaceInDocument,
  inLine: inLineInDocument,
  mirrored: mirroredInDocument,
  straightAbove: straightAboveInDocument,
  sameHeight: sameHeightInDocument,
  onCentreLine: onCentreLineInDocument,
  shareDifference: shareDifferenceInDocument,
  sameRadius: sameRadiusInDocument,
  evenSpacing: evenSpacingInDocument,
  clearBy: clearByInDocument,
} satisfies { readonly [K in KindOfRule]: RuleKindInDocument<RuleOf<K>> };

/** What the document knows of a kind. */
export function ruleKindInDocument(kind: KindOfRule): RuleKindInDocument<Rule> {
  return RULE_KINDS[kind] as unknown as RuleKindInDocument<Rule>; // the table pairs each kind with its own rules
}

/** How ids of new rules of a kind begin. */
export const stemOfRule = (kind: KindOfRule): string => ruleKindInDocument(kind).stem;

/** Any rule, in the movement or not yet. */
type RuleLike = Readonly<Pick<Rule, 'kind'>>;

/** The number of a rule: what it measures, how much it may be, and what it is where the rule has it; none for many kinds. */
export function numberOfRule(rule: RuleLike): (NumberField & { readonly value: number | undefined }) | undefined {
  const { number } = ruleKindInDocument(rule.kind);
  if (!number || number.measures === 'place') return undefined;
  const value: unknown = Reflect.get(rule, number.field);
  return { ...number, value: typeof value === 'number' ? value : undefined };
}

/** A rule with its number set, no less than it may be. A rule with several numbers, or none, stays as it is. */
export function withRuleNumber<R extends RuleLike>(rule: R, value: number): R {
  const number = numberOfRule(rule);
  if (!number || number.isOneOfSeveral) return rule;
  return { ...rule, [number.field]: Math.max(number.least ?? Number.NEGATIVE_INFINITY, value) };
}

/** Text that two rules share if they say the same, whatever their numbers; undefined where every rule is its own. */
export function subjectOfRule(rule: RuleLike): string | undefined {
  return ruleKindInDocument(rule.kind).subject(rule as Rule); // all that is looked at are fields of its kind
}

/** The points that a rule puts at one place; none for most kinds, nor for a rule that is left out. */
export function joinedByRule(rule: Rule): readonly [PointId, PointId] | undefined {
  return rule.leaveOut ? undefined : ruleKindInDocument(rule.kind).joins?.(rule);
}
