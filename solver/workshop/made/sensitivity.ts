/** Before cutting: what a stated error in each length does to every point and every depth. */
import type { PointId, RuleId } from '../../movement/ids.ts';
import { plantMovement } from '../../planting/index.ts';
import type { PlacedMovement } from '../../planting/placed.ts';
import { isNudgeable, nudged } from './nudge.ts';

export interface Sensitivity {
  readonly rule: RuleId;
  /** The error that was tried, mm. */
  readonly error: number;
  /** How far each point moves, mm, most first; points that stay are left out. */
  readonly points: readonly { readonly id: PointId; readonly moved: number }[];
  /** How much each depth's distance changes, mm, most first. */
  readonly depths: readonly { readonly rule: RuleId; readonly change: number }[];
}

/** Effects below this are rounding, mm. */
const NOTHING = 1e-9;

/** Effects of an error of `error` mm in each length in turn, both ways (the mean is reported), worst rule first. */
export function sensitivityOf(placed: PlacedMovement, error = 0.05): readonly Sensitivity[] {
  const rules = placed.movement.rules.filter(isNudgeable);
  const found = rules.map((rule): Sensitivity => {
    const [up, down] = [error, -error].map((by) => plantMovement(nudged(placed, new Map([[rule.id, by]])), placed));
    if (!up || !down) return { rule: rule.id, error, points: [], depths: [] };
    const points = [...placed.places.keys()].flatMap((id) => {
      const [a, b] = [up.places.get(id), down.places.get(id)];
      const moved = a && b ? Math.hypot(a.x - b.x, a.y - b.y) / 2 : 0;
      return moved > NOTHING ? [{ id, moved }] : [];
    });
    const [far, near] = [depthDistances(up), depthDistances(down)];
    const depths = [...far].flatMap(([id, distance]) => {
      const change = (distance - (near.get(id) ?? distance)) / 2;
      return Math.abs(change) > NOTHING ? [{ rule: id, change }] : [];
    });
    points.sort((a, b) => b.moved - a.moved);
    depths.sort((a, b) => Math.abs(b.change) - Math.abs(a.change));
    return { rule: rule.id, error, points, depths };
  });
  return found.sort((a, b) => (b.points[0]?.moved ?? 0) - (a.points[0]?.moved ?? 0));
}

/** Distance of the two arbors of every depth, mm, whether or not the depth was used for planting. */
export function depthDistances(placed: PlacedMovement): ReadonlyMap<RuleId, number> {
  const arbors = new Map<string, PointId>(placed.movement.wheels.map((wheel) => [wheel.id, wheel.arbor]));
  const distances = new Map<RuleId, number>();
  for (const rule of placed.movement.rules) {
    if (rule.kind !== 'depth') continue;
    const [a, b] = rule.wheels.map((id) => {
      const arbor = arbors.get(id);
      return arbor === undefined ? undefined : placed.places.get(arbor);
    });
    if (a && b) distances.set(rule.id, Math.hypot(a.x - b.x, a.y - b.y));
  }
  return distances;
}
