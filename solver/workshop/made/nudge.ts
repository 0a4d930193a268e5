/** A movement with some of its lengths a little off: what errors of cutting, measuring and setting amount to. */
import type { RuleId } from '../../movement/ids.ts';
import type { Movement, Rule } from '../../movement/schema.ts';
import type { PlacedMovement } from '../../planting/placed.ts';

/** May an error of length be given to this rule? */
export const isNudgeable = (rule: Rule): boolean => !rule.leaveOut && NUDGEABLE.has(rule.kind);

const NUDGEABLE = new Set<Rule['kind']>(['depth', 'distance', 'radius', 'clearBy', 'bearing']);

/** The movement with each named rule's length longer by so many mm (a bearing is turned by so much at its point). */
export function nudged(placed: PlacedMovement, by: ReadonlyMap<RuleId, number>): Movement {
  const rules = placed.movement.rules.map((rule): Rule => {
    const error = by.get(rule.id);
    return error === undefined || error === 0 ? rule : nudgedRule(placed, rule, error);
  });
  return { ...placed.movement, rules };
}

function nudgedRule(placed: PlacedMovement, rule: Rule, error: number): Rule {
  switch (rule.kind) {
    case 'distance':
    case 'radius':
      return { ...rule, length: rule.length + error };
    case 'clearBy':
      return { ...rule, gap: rule.gap + error };
    case 'depth':
      if (rule.use === 'held' && rule.held !== undefined) return { ...rule, held: rule.held + error };
      if (rule.use === 'measured' && rule.measured)
        return { ...rule, measured: { ...rule.measured, value: rule.measured.value + error } };
      return { ...rule, allowance: rule.allowance + error };
    case 'bearing': {
      const [point, centre] = [placed.places.get(rule.point), placed.places.get(rule.centre)];
      const radius = point && centre ? Math.hypot(point.x - centre.x, point.y - centre.y) : 0;
      return radius > 0 ? { ...rule, angle: rule.angle + ((error / radius) * 180) / Math.PI } : rule;
    }
    default:
      return rule;
  }
}
