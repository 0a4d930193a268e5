/** The other of the two crossings of a point's loci, as the data of an edit. */

import type { Point } from '../../geometry/index.ts';
import type { PointId } from '../../movement/ids.ts';
import type { Movement, Post } from '../../movement/schema.ts';
import type { PlacedMovement } from '../placed.ts';
import { PlantedMovement } from './planted.ts';
import { plantMovement } from './plantMovement.ts';

export type CrossingChoice = NonNullable<Post['crossing']>;

/** What selects the other crossing: a recorded side where one can be told from points, and a sketch place beside it. */
export interface OtherCrossing {
  /** The point whose crossing it is: for a pipe, the arbor that it rides on. */
  readonly point: PointId;
  readonly at: Point;
  /** Undefined where no two points tell the two crossings apart: then a recorded one is to be taken out. */
  readonly crossing: CrossingChoice | undefined;
}

/**
 * How to choose the other crossing of a point.
 *
 * @param source the movement, or its planting where that is at hand
 * @returns undefined where the point has only one place: held, derived, in a coupled group, or loose
 */
export function otherCrossing(source: Movement | PlacedMovement, pointId: PointId): OtherCrossing | undefined {
  const placed = 'places' in source ? source : plantMovement(source);
  if (!(placed instanceof PlantedMovement)) return undefined;
  const { ground, result, stepOf } = placed.index;
  const asked = ground.indexOf.get(pointId);
  if (asked === undefined) return undefined;
  const carrier = carrierOf(placed, asked);
  const step = result.steps[stepOf[carrier] ?? -1];
  const point = ground.pointIds[carrier];
  if (!step?.other || point === undefined) return undefined;
  const at: Point = { x: step.other[0], y: step.other[1] };
  const here: Point = { x: result.coords[2 * carrier] ?? 0, y: result.coords[2 * carrier + 1] ?? 0 };
  const centres = [...new Set(step.rules.flatMap((rule) => placed.index.pointsOfRule(rule)))].filter(
    (each) => stepOf[each] !== stepOf[carrier],
  );
  const named = centres.flatMap((each): Named[] => {
    const id = ground.pointIds[each];
    return id === undefined ? [] : [{ id, x: result.coords[2 * each] ?? 0, y: result.coords[2 * each + 1] ?? 0 }];
  });
  return { point, at, crossing: tellApart(named, here, at) };
}

/** A place with the point that stands there. */
interface Named extends Point {
  readonly id: PointId;
}

/** The point that a crossing step placed, when the asked one shares its place. */
function carrierOf({ index }: PlantedMovement, asked: number): number {
  const { result, stepOf } = index;
  let at = asked;
  for (let hops = 0; hops < result.steps.length; hops++) {
    const step = result.steps[stepOf[at] ?? -1];
    if (step?.kind !== 'derived') return at;
    const next = step.rules
      .flatMap((rule) => index.pointsOfRule(rule))
      .find(
        (each) =>
          each !== at &&
          result.coords[2 * each] === result.coords[2 * at] &&
          result.coords[2 * each + 1] === result.coords[2 * at + 1] &&
          (stepOf[each] ?? -1) < (stepOf[at] ?? -1),
      );
    if (next === undefined) return at;
    at = next;
  }
  return at;
}

/** The pair of points and the side that hold for `wanted` and fail for `here` by the widest margin. */
export function tellApart(points: readonly Named[], here: Point, wanted: Point): CrossingChoice | undefined {
  let best: CrossingChoice | undefined;
  let margin = 0;
  const scale = Math.hypot(wanted.x - here.x, wanted.y - here.y);
  for (const from of points) {
    for (const to of points) {
      const length = Math.hypot(to.x - from.x, to.y - from.y);
      if (from === to || length === 0) continue;
      const ux = (to.x - from.x) / length;
      const uy = (to.y - from.y) / length;
      const left = (at: Point): number => ux * (at.y - from.y) - uy * (at.x - from.x);
      const ahead = (at: Point): number => ux * (at.x - from.x) + uy * (at.y - from.y);
      const sides = [
        { measure: left, plus: 'left', minus: 'right' },
        { measure: ahead, plus: 'ahead', minus: 'behind' },
      ] as const;
      for (const { measure, plus, minus } of sides) {
        const [a, b] = [measure(wanted), measure(here)];
        if (a * b >= 0 || Math.min(Math.abs(a), Math.abs(b)) <= margin) continue;
        margin = Math.min(Math.abs(a), Math.abs(b));
        best = { from: from.id, to: to.id, side: a > 0 ? plus : minus };
      }
    }
  }
  // A margin that is nothing beside the two places' distance would be decided by rounding.
  return margin > 1e-6 * scale ? best : undefined;
}
