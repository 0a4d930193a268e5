/** The value that a rule would have at the planted places: for measuring, for new rules, and for cures. */
import type { Point } from '../../geometry/index.ts';
import type { PointId } from '../../movement/ids.ts';
import { numberOfRule } from '../../movement/index.ts';
import type { Movement, Rule } from '../../movement/schema.ts';
import type { PlacedMovement } from '../placed.ts';
import type { DraftRule, RuleValue, StruckLocus } from './ruleKinds/kind.ts';
import { ruleKindInPlanting } from './ruleKinds/ruleKinds.ts';

/**
 * What a rule measures at given places.
 *
 * @param placeOf the place of a point, undefined for one that is not there
 * @returns undefined where a part is missing, or an angle is asked about one and the same place
 */
export function ruleValueAt(
  movement: Movement,
  placeOf: (id: PointId) => Point | undefined,
  rule: DraftRule,
): RuleValue | undefined {
  return ruleKindInPlanting(rule.kind).measure({ movement, placeOf }, rule);
}

/**
 * What a rule, in the movement or not yet, measures in a planted movement.
 *
 * @param movement the movement whose wheels and outlines count; usually `placed.movement`
 */
export function ruleValueNow(movement: Movement, placed: PlacedMovement, rule: DraftRule): RuleValue | undefined {
  return ruleValueAt(movement, (id) => placed.places.get(id), rule);
}

/**
 * How far a rule comes out from what it asks at given places, mm: more or less than its number, across the arm of a
 * direction; 0 where it cannot be measured.
 *
 * @param length the length that the rule asks for, mm, where its kind has one that is not written in it
 */
export function ruleMissAt(
  movement: Movement,
  placeOf: (id: PointId) => Point | undefined,
  rule: Rule,
  length: number | undefined,
): number {
  const now = ruleValueAt(movement, placeOf, rule);
  if (!now) return 0;
  if (now.kind === 'off') return now.value;
  if (now.kind === 'length') return now.value - (length ?? now.value);
  const asked = numberOfRule(rule)?.value ?? now.value;
  if (now.kind === 'gap') return now.value - asked;
  const turned = (now.value - asked) / 360;
  return (turned - Math.round(turned)) * 2 * Math.PI * now.arm;
}

/**
 * The locus on which one rule keeps a point, with the point that it is struck from; none for rules that fix it outright.
 *
 * @param length the length that the rule asks for, mm; as it stands where the rule has none
 */
export function locusStruck(
  { movement, places }: PlacedMovement,
  rule: Rule,
  point: PointId,
  length?: number,
): StruckLocus | undefined {
  return ruleKindInPlanting(rule.kind).struck?.({ movement, placeOf: (id) => places.get(id) }, rule, point, length);
}
