/** Sharing the difference: offered for a point of which more lengths are known than it needs. */
import type { PointId } from '../../solver/movement/ids.ts';
import { numberOfRule, pointsOfRule } from '../../solver/movement/index.ts';
import type { PlacedMovement } from '../../solver/planting/placed.ts';
import { offer, type RuleOffer } from './ruleOffers.ts';

/** As many lengths leave something to share. */
const FEWEST = 3;

/** The offer to share what the lengths of a point differ by; none with two lengths, or where one is shared already. */
export function shareOffers(placed: PlacedMovement, point: PointId, nameOf: (id: string) => string): RuleOffer[] {
  const { movement, rules } = placed;
  const isShared = movement.rules.some((rule) => 'among' in rule && rule.point === point);
  const lengths = movement.rules.filter((rule) => {
    const measures = numberOfRule(rule)?.measures;
    const counts = !rule.leaveOut && rule.duty !== 'checks' && (measures === 'length' || measures === 'gap');
    const points = pointsOfRule(movement, rule);
    return counts && points.includes(point) && points.every((id) => placed.places.has(id));
  });
  const hasCheck = lengths.some(({ id }) => ['checks', 'disagrees'].includes(rules.get(id)?.role ?? ''));
  if (isShared || lengths.length < FEWEST || !hasCheck) return [];
  const draft = { kind: 'shareDifference', point, among: lengths.map(({ id }) => id) } as const;
  return [offer(movement, draft, point, nameOf, { kind: 'none', value: 0 })];
}
