/** What became of every rule of the movement. */
import type { RuleId } from '../../movement/ids.ts';
import type { RuleOutcome } from '../placed.ts';
import type { PlacementIndex } from './placementIndex.ts';

/** Outcomes in the order of the movement's rules. */
export function ruleOutcomes({ ground, result }: PlacementIndex): ReadonlyMap<RuleId, RuleOutcome> {
  const spare = new Set(result.spare);
  const disagreeing = new Set(result.disagreements.flatMap(({ rules }) => rules));
  const unusable = new Map(ground.unusable.map((each) => [each.rule, each]));
  const outcomes = new Map<RuleId, RuleOutcome>();
  for (const { id, leaveOut } of ground.movement.rules) {
    const length = ground.lengths.get(id) ?? {};
    const networkRules = ground.networkRulesOf.get(id) ?? [];
    const broken = unusable.get(id);
    if (leaveOut) outcomes.set(id, { id, missBy: 0, role: 'leftOut', ...length });
    else if (broken) outcomes.set(id, { id, missBy: broken.lacking, role: 'disagrees' });
    else {
      const missBy = networkRules.reduce((most, rule) => Math.max(most, Math.abs(result.missBy[rule] ?? 0)), 0);
      const isSpare = networkRules.length > 0 && networkRules.every((rule) => spare.has(rule));
      const role = networkRules.some((rule) => disagreeing.has(rule)) ? 'disagrees' : isSpare ? 'spare' : 'places';
      outcomes.set(id, { id, missBy, role, ...length });
    }
  }
  return outcomes;
}
