/** What became of every rule of the movement. */
import type { RuleId } from '../../movement/ids.ts';
import type { Rule } from '../../movement/schema.ts';
import { TOUCHING } from '../../tolerances.ts';
import { RuleKind } from '../network.ts';
import type { RuleOutcome } from '../placed.ts';
import { checkOutcome } from './checksOver.ts';
import type { PlantingGround } from './ground.ts';
import type { PlacementIndex } from './placementIndex.ts';
import { standingRules } from './standing.ts';

/** Outcomes in the order of the movement's rules. */
export function ruleOutcomes(index: PlacementIndex): ReadonlyMap<RuleId, RuleOutcome> {
  const { ground, result } = index;
  const disagreeing = new Set(result.disagreements.flatMap(({ rules }) => rules));
  const unusable = new Map(ground.unusable.map((each) => [each.rule, each]));
  const standing = standingRules(ground.movement);
  const outcomes = new Map<RuleId, RuleOutcome>();
  for (const rule of ground.movement.rules) {
    const { id } = rule;
    const length = ground.lengths.get(id) ?? {};
    const networkRules = ground.networkRulesOf.get(id) ?? [];
    const broken = unusable.get(id);
    if (rule.leaveOut) outcomes.set(id, { id, missBy: 0, role: 'leftOut', duty: 'leftOut', ...length });
    else if (broken) outcomes.set(id, { id, missBy: broken.lacking, role: 'disagrees', duty: dutyOf(index, rule) });
    else {
      const check = checkOutcome(index, rule);
      const missBy = check?.missBy ?? networkRules.reduce((most, r) => Math.max(most, result.missBy[r] ?? 0), 0);
      const isOver = check !== undefined && check.missBy > check.allowed;
      const stands = isOver && standing.has(id);
      const isMissed = networkRules.some((each) => !result.checks[each] && (result.missBy[each] ?? 0) > TOUCHING);
      const isDisagreeing = (isOver && !stands) || isMissed || networkRules.some((each) => disagreeing.has(each));
      const allowed = check && Number.isFinite(check.allowed) && { allowed: check.allowed };
      const role = isDisagreeing ? 'disagrees' : check ? 'checks' : 'places';
      const duty = dutyOf(index, rule, check !== undefined);
      outcomes.set(id, { id, missBy, role, duty, ...allowed, ...(stands && { stands }), ...length });
    }
  }
  return outcomes;
}

/** What a rule that is not left out is for. */
function dutyOf({ ground }: PlacementIndex, { id, kind, duty }: Rule, isCheck = false): RuleOutcome['duty'] {
  if (duty === 'checks') return 'told';
  if (!isCheck) return 'places';
  const { made, heldBy, network } = ground;
  const own = ground.networkRulesOf.get(id) ?? [];
  if (!made) return 'checks';
  // A held place gives way to the hole.
  const isHeldElsewhere = (each: number): boolean =>
    network.kinds[each] === RuleKind.onLine && heldBy.get(network.points[4 * each] ?? -1)?.by === 'drilled';
  const isHeld = kind === 'held' && own.some(isHeldElsewhere);
  return isHeld || own.some((each) => made.released[each] || namesGhost(ground, each)) ? 'released' : 'checks';
}

/** Does a pattern go on from the ghost of a drilled point? */
function namesGhost({ network, made }: PlantingGround, rule: number): boolean {
  const ghosts = new Set(made?.ghostOf.values());
  return network.points.subarray(4 * rule, 4 * rule + 4).some((point) => ghosts.has(point));
}
