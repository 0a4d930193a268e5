/**
 * What kinds of rules share when they are put to the network.
 *
 * A rule that names a missing part, or the same point twice, asks nothing of the network: it is listed as unusable, so
 * that it is told and not lost. (Validation refuses most of these; planting must not fall over them.)
 */
import type { PointId } from '../../../movement/ids.ts';
import type { Rule } from '../../../movement/schema.ts';
import type { NotKeptCause } from '../../disagreement.ts';
import type { RuleKindCode } from '../../network.ts';
import type { RuleSource } from '../ground.ts';
import type { Translation } from './kind.ts';

/** What a rule of the network comes from. */
export const sourceOf = (rule: Rule): RuleSource => ({ kind: 'rule', rule: rule.id });

/** Asks one rule of the network among points of the movement; false where it cannot be asked. */
export function askAmong(
  to: Translation,
  rule: Rule,
  kind: RuleKindCode,
  ids: readonly PointId[],
  values: readonly number[] = [],
): boolean {
  const points = networkPoints(to, rule, ids);
  if (points) to.builder.rule(sourceOf(rule), kind, points, values, rule.plusMinus ?? 0);
  return points !== undefined;
}

/** Network points of ids that must all be there and all be different; else the rule is refused. */
export function networkPoints(to: Translation, rule: Rule, ids: readonly PointId[]): number[] | undefined {
  const indices = ids.map((id) => to.builder.indexOf.get(id));
  if (indices.includes(undefined)) {
    refuse(to, rule, [], { kind: 'missing', what: 'point' });
    return undefined;
  }
  const twice = ids.find((id, index) => ids.indexOf(id) !== index);
  if (twice !== undefined) {
    refuse(to, rule, [twice], { kind: 'twice', point: twice });
    return undefined;
  }
  return indices.map((index) => index ?? -1);
}

/** Lists a rule that cannot be asked. */
export function refuse(to: Translation, rule: Rule, points: readonly PointId[], why: NotKeptCause, lacking = 0): void {
  to.builder.unusable.push({
    rule: rule.id,
    points: points.filter((id) => to.builder.indexOf.has(id)),
    why,
    lacking,
  });
}
