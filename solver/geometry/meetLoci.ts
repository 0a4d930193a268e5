/**
 * Where two loci meet, for every pair of shapes, with rays cut off behind their start.
 *
 * A locus is five numbers: its shape, x, y, and for a circle its radius, for a line or ray its unit direction.
 * `crossingsOf…` of `locus.ts` asks the same of loci as values. Array kernel: results have eight numbers, hence the `!`.
 */

import { HOLDS } from '../tolerances.ts';
import { crossCircleLineInto, crossCirclesInto, crossLinesInto } from './circles.ts';

/** Shapes of a locus, as its first number. */
export const Shape = { circle: 0, line: 1, ray: 2 } as const;

/** How two loci meet. `touch`: they meet without crossing, so the place is not fixed to first order. */
export const Meet = { two: 0, one: 1, touch: 2, none: 3, same: 4 } as const;

/** Sine of the angle below which two lines count as parallel: crossing them would cost nine of sixteen digits. */
const PARALLEL = 1e-9;

/**
 * Meets locus `f` with locus `g`.
 *
 * Writes the first crossing to `out[0..1]`, the second (or the same again) to `out[2..3]`, the gap in mm to `out[4]`
 * (0 when they meet). For `none` both places are the compromise: halfway between the nearest points of the two.
 * For `same`, where every point serves, the place of `f` nearest to (sx, sy).
 */
export function meetLoci(f: Float64Array, g: Float64Array, sx: number, sy: number, out: Float64Array): number {
  out[4] = 0;
  if (f[0] === Shape.circle && g[0] === Shape.circle) return meetCircles(f, g, sx, sy, out);
  if (f[0] === Shape.circle) return meetCircleLine(f, g, out);
  if (g[0] === Shape.circle) return meetCircleLine(g, f, out);
  return meetLines(f, g, sx, sy, out);
}

function meetCircles(f: Float64Array, g: Float64Array, sx: number, sy: number, out: Float64Array): number {
  const overlap = crossCirclesInto(out, f[1]!, f[2]!, f[3]!, g[1]!, g[2]!, g[3]!);
  if (overlap > touchOf(f[3]!, g[3]!)) return Meet.two;
  const apart = Math.hypot(g[1]! - f[1]!, g[2]! - f[2]!);
  if (apart < HOLDS * f[3]!) {
    // About one centre: no direction is better than another, so the sketch decides.
    const away = Math.hypot(sx - f[1]!, sy - f[2]!);
    const radius = (f[3]! + g[3]!) / 2;
    out[0] = out[2] = f[1]! + (away > 0 ? ((sx - f[1]!) / away) * radius : radius);
    out[1] = out[3] = f[2]! + (away > 0 ? ((sy - f[2]!) / away) * radius : 0);
    out[4] = Math.abs(f[3]! - g[3]!);
    return out[4]! <= HOLDS ? Meet.same : Meet.none;
  }
  return touching(out, overlap, touchOf(f[3]!, g[3]!));
}

/** Touching within 1e-9 of the smaller radius, and never more than the bound to which a rule holds. */
function touchOf(ra: number, rb: number): number {
  const smaller = ra < rb ? ra : rb;
  return smaller < 1 ? HOLDS * smaller : HOLDS;
}

function touching(out: Float64Array, overlap: number, touch: number): number {
  out[0] = out[2] = (out[0]! + out[2]!) / 2;
  out[1] = out[3] = (out[1]! + out[3]!) / 2;
  if (overlap >= -touch) return Meet.touch;
  out[4] = -overlap;
  return Meet.none;
}

/** Is the place on the ray, and not behind its start? Lines have no start. */
function ahead(locus: Float64Array, x: number, y: number): boolean {
  return locus[0] === Shape.line || (x - locus[1]!) * locus[3]! + (y - locus[2]!) * locus[4]! >= -HOLDS;
}

function meetCircleLine(c: Float64Array, l: Float64Array, out: Float64Array): number {
  const overlap = crossCircleLineInto(out, c[1]!, c[2]!, c[3]!, l[1]!, l[2]!, l[3]!, l[4]!);
  const first = ahead(l, out[0]!, out[1]!);
  const second = ahead(l, out[2]!, out[3]!);
  if (!first && !second) return circleBeforeRay(c, l, out);
  if (overlap <= touchOf(c[3]!, c[3]!)) return touching(out, overlap, touchOf(c[3]!, c[3]!));
  if (first && second) return Meet.two;
  const keep = first ? 0 : 2;
  out[0] = out[2] = out[keep]!;
  out[1] = out[3] = out[keep + 1]!;
  return Meet.one;
}

/** A ray that leaves the circle behind: halfway between the circle and the ray's nearest place, which is its start. */
function circleBeforeRay(c: Float64Array, l: Float64Array, out: Float64Array): number {
  const wx = l[1]! - c[1]!;
  const wy = l[2]! - c[2]!;
  const away = Math.hypot(wx, wy);
  const gap = away - c[3]!;
  out[0] = out[2] = l[1]! - (away > 0 ? (wx / away) * (gap / 2) : 0);
  out[1] = out[3] = l[2]! - (away > 0 ? (wy / away) * (gap / 2) : 0);
  out[4] = Math.abs(gap);
  return Meet.none;
}

function meetLines(f: Float64Array, g: Float64Array, sx: number, sy: number, out: Float64Array): number {
  const sine = crossLinesInto(out, f[1]!, f[2]!, f[3]!, f[4]!, g[1]!, g[2]!, g[3]!, g[4]!);
  if (Math.abs(sine) > PARALLEL) {
    if (ahead(f, out[0]!, out[1]!) && ahead(g, out[0]!, out[1]!)) return Meet.one;
    return raysApart(f, g, out);
  }
  // Parallel: halfway between the two at the sketch's foot.
  const along = (sx - f[1]!) * f[3]! + (sy - f[2]!) * f[4]!;
  const t = f[0] === Shape.ray && along < 0 ? 0 : along;
  const x = f[1]! + f[3]! * t;
  const y = f[2]! + f[4]! * t;
  const off = g[3]! * (y - g[2]!) - g[4]! * (x - g[1]!);
  out[0] = out[2] = x + (g[4]! * off) / 2;
  out[1] = out[3] = y - (g[3]! * off) / 2;
  if (Math.abs(off) > HOLDS) {
    out[4] = Math.abs(off);
    return Meet.none;
  }
  return ahead(g, x, y) ? Meet.same : raysApart(f, g, out);
}

/** Foot of (x, y) on a line or ray, to `out[at..]`; returns its distance, mm. */
function footOn(l: Float64Array, x: number, y: number, out: Float64Array, at: number): number {
  const along = (x - l[1]!) * l[3]! + (y - l[2]!) * l[4]!;
  const t = l[0] === Shape.ray && along < 0 ? 0 : along;
  out[at] = l[1]! + l[3]! * t;
  out[at + 1] = l[2]! + l[4]! * t;
  return Math.hypot(x - out[at]!, y - out[at + 1]!);
}

/** Two lines of which a ray ends before they meet: halfway between that ray's start and the other's nearest place. */
function raysApart(f: Float64Array, g: Float64Array, out: Float64Array): number {
  const toG = f[0] === Shape.ray ? footOn(g, f[1]!, f[2]!, out, 0) : Number.POSITIVE_INFINITY;
  const toF = g[0] === Shape.ray ? footOn(f, g[1]!, g[2]!, out, 2) : Number.POSITIVE_INFINITY;
  const [at, start, gap] = toG <= toF ? [0, f, toG] : [2, g, toF];
  const x = (out[at]! + start[1]!) / 2;
  const y = (out[at + 1]! + start[2]!) / 2;
  out[0] = out[2] = x;
  out[1] = out[3] = y;
  out[4] = gap;
  return Meet.none;
}
