/** Rings of wheels for the tests: places by name, rings of single wheels, and the independent way round. */

import type { Point } from '../../solver/geometry/index.ts';
import type { ArborId } from '../../solver/movement/ids.ts';
import type { Movement } from '../../solver/movement/schema.ts';
import { type DrawnWheel, meshed, missOf } from '../teeth/twoWheels.ts';
import { sketchMovement } from './turningMovement.ts';

export type Spots = ReadonlyMap<ArborId, Point>;
export const spots = (entries: readonly (readonly [string, number, number])[]): Spots =>
  new Map(entries.map(([id, x, y]) => [id as ArborId, { x, y }]));

/** A ring of single wheels W0, W1, … on arbors A0, A1, …, each meshing the next. */
export const ringMovement = (teeth: readonly number[]): Movement =>
  sketchMovement({
    wheels: Object.fromEntries(teeth.map((count, index) => [`W${index}`, [`A${index}`, count] as const])),
    depths: teeth.map((_, index) => `W${index} W${(index + 1) % teeth.length}`),
  });

/** Turning each wheel to mesh with the one before; the miss of the last against the first, teeth. */
export function independentMiss(wheels: readonly DrawnWheel[]): number {
  const turned: DrawnWheel[] = [];
  for (const wheel of wheels) {
    const before = turned[turned.length - 1];
    turned.push(before ? meshed(before, wheel) : wheel);
  }
  const [first, last] = [turned[0], turned[turned.length - 1]];
  return first && last ? missOf(last, first) : Number.NaN;
}

/** A closed polygon of pitch-tangent wheels (module 1): all but the last two arbors along a bent line, then two arcs. */
export function bentRing(teeth: readonly number[], bends: readonly number[]): readonly Point[] | undefined {
  const points: Point[] = [{ x: 0, y: 0 }];
  let heading = 0;
  for (let index = 1; index < teeth.length - 1; index++) {
    heading += bends[index] ?? 0;
    const length = ((teeth[index - 1] ?? 0) + (teeth[index] ?? 0)) / 2;
    const last = points[index - 1] ?? { x: 0, y: 0 };
    points.push({ x: last.x + length * Math.cos(heading), y: last.y + length * Math.sin(heading) });
  }
  const [from, to] = [points[points.length - 1] ?? { x: 0, y: 0 }, points[0] ?? { x: 0, y: 0 }];
  const n = teeth.length;
  const r1 = ((teeth[n - 2] ?? 0) + (teeth[n - 1] ?? 0)) / 2;
  const r2 = ((teeth[0] ?? 0) + (teeth[n - 1] ?? 0)) / 2;
  const d = Math.hypot(to.x - from.x, to.y - from.y);
  const along = (d * d + r1 * r1 - r2 * r2) / (2 * d);
  const across = Math.sqrt(r1 * r1 - along * along);
  if (!Number.isFinite(across) || across < 1) return undefined;
  const [ux, uy] = [(to.x - from.x) / d, (to.y - from.y) / d];
  points.push({ x: from.x + along * ux - across * uy, y: from.y + along * uy + across * ux });
  return points;
}
