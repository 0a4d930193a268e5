/** Directions in which a loose point can still move, from the free motions of the whole. */
import type { Point } from '../../geometry/index.ts';

/** A motion that moves a point less than this share of the largest displacement leaves it still: rounding of the basis. */
const STILL = 1e-7;
/** Ratio of the squares of the two displacements below which the lesser is rounding. */
const NARROW = 1e-10;

/**
 * Unit vectors that span the displacements of one point: none, one or two (then square to each other, the freer first).
 *
 * @param motions displacements [dx0, dy0, …], largest 1
 */
export function freeDirections(motions: readonly Float64Array[], point: number): readonly Point[] {
  let xx = 0;
  let xy = 0;
  let yy = 0;
  for (const motion of motions) {
    const dx = motion[2 * point] ?? 0;
    const dy = motion[2 * point + 1] ?? 0;
    xx += dx * dx;
    xy += dx * dy;
    yy += dy * dy;
  }
  const middle = (xx + yy) / 2;
  const reach = Math.hypot((xx - yy) / 2, xy);
  if (middle + reach < STILL * STILL) return [];
  const azimuth = 0.5 * Math.atan2(2 * xy, xx - yy);
  const first = { x: Math.cos(azimuth), y: Math.sin(azimuth) };
  // The lesser eigenvalue as determinant over the greater: no cancellation where the displacements are parallel.
  const lesser = (xx * yy - xy * xy) / (middle + reach);
  return lesser < NARROW * (middle + reach) ? [first] : [first, { x: -first.y, y: first.x }];
}
