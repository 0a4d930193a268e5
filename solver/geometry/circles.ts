/**
 * Crossings of circles and straight lines in the plane, kept exact near touching.
 *
 * Two layers: `cross…Into` are scalar kernels for the planting loop (they write four numbers and return by how much
 * the two overlap), and `cross…` give the same answer as a value with a `kind`. Lengths in mm, y up.
 */
import { HOLDS } from '../tolerances.ts';
import type { Point } from './point.ts';

/** Where two loci meet. `gap` is in mm: positive when they stay apart, negative when one lies inside the other. */
export type Crossing =
  | { readonly kind: 'two'; readonly points: readonly [Point, Point] }
  | { readonly kind: 'one'; readonly point: Point }
  | { readonly kind: 'none'; readonly gap: number }
  /** The two loci coincide: every point of one is on the other. */
  | { readonly kind: 'same' };

/**
 * Crossings of two circles for inner loops: writes the one left of a→b to `out[0..1]`, the other to `out[2..3]`.
 *
 * @returns the overlap, mm: > 0 when they cross, < 0 (minus the gap) when they do not reach or one lies inside the
 * other; then both results are the place halfway between them on the line of centres.
 * Source of the half-chord: W. Kahan, "Miscalculating Area and Angles of a Needle-like Triangle": the sides are
 * sorted and grouped so that no factor loses digits, which keeps near-tangent crossings right.
 */
export function crossCirclesInto(
  out: Float64Array,
  ax: number,
  ay: number,
  ra: number,
  bx: number,
  by: number,
  rb: number,
): number {
  const dx = bx - ax;
  const dy = by - ay;
  const d = Math.sqrt(dx * dx + dy * dy);
  const ux = d > 0 ? dx / d : 1;
  const uy = d > 0 ? dy / d : 0;
  // Sides in falling order: big >= mid >= small.
  const high = ra > rb ? ra : rb;
  const low = ra > rb ? rb : ra;
  const big = d > high ? d : high;
  const small = d < low ? d : low;
  const mid = d > high ? high : d < low ? low : d;
  const slack = small - (big - mid);
  if (slack <= 0 || d === 0) {
    // Apart: between the nearest points. Inside: between the far point of the inner circle and the outer one.
    const along = d >= high ? (ra + d - rb) / 2 : ra >= rb ? (ra + d + rb) / 2 : (d - ra - rb) / 2;
    out[0] = out[2] = ax + ux * along;
    out[1] = out[3] = ay + uy * along;
    return slack < 0 ? slack : 0;
  }
  const along = (d + ((ra - rb) / d) * (ra + rb)) / 2;
  const half = Math.sqrt((big + (mid + small)) * slack * (small + (big - mid)) * (big + (mid - small))) / (2 * d);
  const fx = ax + ux * along;
  const fy = ay + uy * along;
  out[0] = fx - uy * half;
  out[1] = fy + ux * half;
  out[2] = fx + uy * half;
  out[3] = fy - ux * half;
  return slack;
}

/**
 * Crossings of a circle and the line through (px, py) along the unit vector (ux, uy), for inner loops: the one ahead
 * to `out[0..1]`, the one behind to `out[2..3]`.
 *
 * @returns the overlap, mm: radius less the centre's distance from the line; below zero both results are the place
 * halfway between circle and line.
 */
export function crossCircleLineInto(
  out: Float64Array,
  cx: number,
  cy: number,
  r: number,
  px: number,
  py: number,
  ux: number,
  uy: number,
): number {
  const wx = cx - px;
  const wy = cy - py;
  const along = wx * ux + wy * uy;
  const off = ux * wy - uy * wx;
  const away = Math.abs(off);
  const overlap = r - away;
  const fx = px + ux * along;
  const fy = py + uy * along;
  if (overlap <= 0) {
    const lift = ((off < 0 ? -1 : 1) * -overlap) / 2;
    out[0] = out[2] = fx - uy * lift;
    out[1] = out[3] = fy + ux * lift;
    return overlap;
  }
  const half = Math.sqrt(overlap * (r + away));
  out[0] = fx + ux * half;
  out[1] = fy + uy * half;
  out[2] = fx - ux * half;
  out[3] = fy - uy * half;
  return overlap;
}

/**
 * Crossing of two lines given by a point and a unit vector each, written to `out[0..1]` (and `out[2..3]`).
 *
 * @returns the sine of the angle from the first to the second; 0 when parallel, and then the result is halfway
 * between the first line's point and its foot on the second.
 */
export function crossLinesInto(
  out: Float64Array,
  px: number,
  py: number,
  ux: number,
  uy: number,
  qx: number,
  qy: number,
  vx: number,
  vy: number,
): number {
  const sine = ux * vy - uy * vx;
  const wx = qx - px;
  const wy = qy - py;
  if (sine === 0) {
    const off = vx * wy - vy * wx;
    out[0] = out[2] = px - (vy * off) / 2;
    out[1] = out[3] = py + (vx * off) / 2;
    return 0;
  }
  const t = (wx * vy - wy * vx) / sine;
  out[0] = out[2] = px + ux * t;
  out[1] = out[3] = py + uy * t;
  return sine;
}

const first = (out: Float64Array): Point => ({ x: out[0] as number, y: out[1] as number }); // `out` always has four numbers
const second = (out: Float64Array): Point => ({ x: out[2] as number, y: out[3] as number }); // as above

/** One point or two, by how far they overlap; the one of a touch lies halfway. */
function crossingOf(out: Float64Array, overlap: number, touch: number): Crossing | undefined {
  if (overlap > touch) return { kind: 'two', points: [first(out), second(out)] };
  if (overlap < -touch) return undefined;
  const [a, b] = [first(out), second(out)];
  return { kind: 'one', point: { x: (a.x + b.x) / 2, y: (a.y + b.y) / 2 } };
}

/**
 * Crossings of two circles, the one left of the line from `a` to `b` first.
 *
 * @param a centre of the first circle, mm, y up
 * @param ra its radius, mm, > 0
 * @param b centre of the second circle
 * @param rb its radius, mm, > 0
 * @param touch gap or overlap still read as touching, mm (default 1e-9)
 * @returns `two` points, `one` where they touch, `none` with the gap in mm (negative: one inside the other), or `same`
 * @throws never; "none" is an answer
 */
export function crossCircles(a: Point, ra: number, b: Point, rb: number, touch = HOLDS): Crossing {
  const out = new Float64Array(4);
  const overlap = crossCirclesInto(out, a.x, a.y, ra, b.x, b.y, rb);
  const d = Math.hypot(b.x - a.x, b.y - a.y);
  if (d <= touch && Math.abs(ra - rb) <= touch) return { kind: 'same' };
  const outside = d > Math.max(ra, rb);
  return crossingOf(out, overlap, touch) ?? { kind: 'none', gap: outside ? -overlap : overlap };
}

/**
 * Crossings of a circle and the line through `p` along the direction (cos `angle`, sin `angle`), the one ahead first.
 *
 * @returns `two`, `one` where it touches, or `none` with the gap in mm (> 0)
 */
export function crossCircleLine(centre: Point, radius: number, p: Point, angle: number, touch = HOLDS): Crossing {
  return crossCircleAlong(centre, radius, p, { x: Math.cos(angle), y: Math.sin(angle) }, touch);
}

/** As `crossCircleLine`, with the direction as a vector of any length > 0. */
export function crossCircleAlong(centre: Point, radius: number, p: Point, along: Point, touch = HOLDS): Crossing {
  const out = new Float64Array(4);
  const length = Math.hypot(along.x, along.y);
  const ux = along.x / length;
  const uy = along.y / length;
  const overlap = crossCircleLineInto(out, centre.x, centre.y, radius, p.x, p.y, ux, uy);
  return crossingOf(out, overlap, touch) ?? { kind: 'none', gap: -overlap };
}

/**
 * Crossing of two lines, each through a point along a direction of any length > 0.
 *
 * @returns `one`, or for parallel lines `none` with their distance in mm, or `same` when that is within `touch`
 */
export function crossLines(p: Point, along: Point, q: Point, alongQ: Point, touch = HOLDS): Crossing {
  const out = new Float64Array(4);
  const lu = Math.hypot(along.x, along.y);
  const lv = Math.hypot(alongQ.x, alongQ.y);
  const [ux, uy, vx, vy] = [along.x / lu, along.y / lu, alongQ.x / lv, alongQ.y / lv];
  const sine = crossLinesInto(out, p.x, p.y, ux, uy, q.x, q.y, vx, vy);
  if (Math.abs(sine) > PARALLEL) return { kind: 'one', point: first(out) };
  const gap = Math.abs(vx * (q.y - p.y) - vy * (q.x - p.x));
  return gap <= touch ? { kind: 'same' } : { kind: 'none', gap };
}

/** Sine of the angle below which two lines are parallel: rounding of a unit vector's components, times four. */
const PARALLEL = 1e-15;
