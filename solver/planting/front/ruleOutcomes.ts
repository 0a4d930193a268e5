/** What became of every rule of the movement. */
import type { RuleId } from '../../movement/ids.ts';
import type { RuleOutcome } from '../placed.ts';
import { checkOutcome } from './checksOver.ts';
import type { PlacementIndex } from './placementIndex.ts';

/** Outcomes in the order of the movement's rules. */
export function ruleOutcomes(index: PlacementIndex): ReadonlyMap<RuleId, RuleOutcome> {
  const { ground, result } = index;
  const disagreeing = new Set(result.disagreements.flatMap(({ rules }) => rules));
  const unusable = new Map(ground.unusable.map((each) => [each.rule, each]));
  const outcomes = new Map<RuleId, RuleOutcome>();
  for (const rule of ground.movement.rules) {
    const { id } = rule;
    const length = ground.lengths.get(id) ?? {};
    const networkRules = ground.networkRulesOf.get(id) ?? [];
    const broken = unusable.get(id);
    if (rule.leaveOut) outcomes.set(id, { id, missBy: 0, role: 'leftOut', ...length });
    else if (broken) outcomes.set(id, { id, missBy: broken.lacking, role: 'disagrees' });
    else {
      const missBy = networkRules.reduce((most, each) => Math.max(most, Math.abs(result.missBy[each] ?? 0)), 0);
      const check = checkOutcome(index, rule);
      const isOver = check !== undefined && check.missBy > check.allowed;
      const isDisagreeing = isOver || networkRules.some((each) => disagreeing.has(each));
      const allowed = check && { allowed: check.allowed };
      const role = isDisagreeing ? 'disagrees' : check ? 'checks' : 'places';
      outcomes.set(id, { id, missBy, role, ...allowed, ...length });
    }
  }
  return outcomes;
}
