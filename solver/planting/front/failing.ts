/** Which network rules fail in a planting: those that place and miss, and checks that are over and not let stand. */
import { TOUCHING } from '../../tolerances.ts';
import { PointState } from '../network.ts';
import { checkOutcome } from './checksOver.ts';
import type { PlacementIndex } from './placementIndex.ts';
import { standingRules } from './standing.ts';

/** Their indices: of a check the part that is worst. */
export function failingRules(index: PlacementIndex): number[] {
  const { ground, result } = index;
  const standing = standingRules(ground.movement);
  const found: number[] = [];
  for (let r = 0; r < ground.network.ruleCount; r++) {
    if (!result.checks[r] && (result.missBy[r] ?? 0) > TOUCHING) found.push(r);
  }
  for (const rule of ground.movement.rules) {
    if (rule.leaveOut || standing.has(rule.id)) continue;
    const outcome = checkOutcome(index, rule);
    if (outcome && outcome.missBy > outcome.allowed) found.push(outcome.worst);
  }
  return found;
}

/** Does a rule name a place that is contested, so that what it measures says nothing? */
export function isUnsettled({ ground, result }: PlacementIndex, rule: number): boolean {
  const points = ground.network.points.subarray(4 * rule, 4 * rule + 4);
  return points.some(
    (point) => point >= 0 && result.states[point] === PointState.contested && !ground.heldBy.has(point),
  );
}
