/**
 * The locus of a point under one rule when all else is placed: a circle, a line or a ray.
 *
 * A locus is five numbers: shape, x, y, and for a circle its radius, for a line or ray its unit direction.
 * A derived place w = α·u + β carries its locus back to its root u by the similarity (w - β) / α.
 * Array kernel: indices come from a checked network, hence the `!`.
 */
import { Shape } from '../../geometry/index.ts';
import { type Network, RuleKind } from '../network.ts';
import type { Reduction } from './reduce.ts';
import { isLinearPair } from './residual.ts';

/** α and β of the place that the rule speaks of, as a function of the root. */
const similarity = new Float64Array(4);

/**
 * Writes the locus of `root` under `rule` to `out[0..4]`.
 *
 * The plan has checked that the rule is a locus for this root. Directions of length zero are read as +x; the proof
 * that follows the placing tells when such a rule does not hold.
 */
export function locusOf(
  network: Network,
  reduction: Reduction,
  rule: number,
  root: number,
  coords: Float64Array,
  out: Float64Array,
): void {
  const { points } = reduction;
  const p = points[4 * rule]!;
  const a = points[4 * rule + 1]!;
  const c = points[4 * rule + 2]!;
  const v0 = network.values[3 * rule]!;
  const kind = network.kinds[rule];
  const isDifference = kind === RuleKind.distance || (kind === RuleKind.ray && c < 0);
  if (isDifference && reduction.derivedAt) {
    differenceLocus(reduction, p, a, root, coords, v0, out, kind === RuleKind.ray);
  } else if (isLinearPair(kind!)) {
    linearLocus(network, reduction, rule, root, coords, out);
  } else if (kind === RuleKind.distance) {
    circle(out, coords, p === root ? a : p, v0);
  } else if (kind === RuleKind.onLine) {
    const ny = network.values[3 * rule + 1]!;
    const offset = network.values[3 * rule + 2]!;
    straight(out, Shape.line, v0 * offset, ny * offset, -ny, v0);
    backToRoot(reduction, p, root, coords, out);
  } else if (kind === RuleKind.ray && c >= 0) {
    swungRay(reduction, p, a, c, root, coords, v0, out);
  } else if (kind === RuleKind.ray) {
    const [from, sign] = p === root ? [a, 1] : [p, -1];
    straight(out, Shape.ray, coords[2 * from]!, coords[2 * from + 1]!, sign * Math.cos(v0), sign * Math.sin(v0));
  } else if (kind === RuleKind.inLine) {
    lineThrough(reduction, [p, a, c], root, coords, out);
  } else {
    sameRadiusLocus(reduction, p, a, c, root, coords, out);
  }
}

function straight(out: Float64Array, shape: number, x: number, y: number, ux: number, uy: number): void {
  out[0] = shape;
  out[1] = x;
  out[2] = y;
  out[3] = ux;
  out[4] = uy;
}

function circle(out: Float64Array, coords: Float64Array, centre: number, radius: number): void {
  out[0] = Shape.circle;
  out[1] = coords[2 * centre]!;
  out[2] = coords[2 * centre + 1]!;
  out[3] = radius;
}

function uses(reduction: Reduction, point: number, root: number): boolean {
  if (point === root) return true;
  const at = reduction.derivedAt ? reduction.derivedAt[point]! : -1;
  return at >= 0 && reduction.derived[at]!.roots.includes(root);
}

/** Adds `sign` times the point's place, as a function of the root, to `similarity`. */
function addPlace(reduction: Reduction, point: number, root: number, coords: Float64Array, sign: number): void {
  if (point === root) {
    similarity[0]! += sign;
    return;
  }
  const at = reduction.derivedAt ? reduction.derivedAt[point]! : -1;
  if (at < 0) {
    similarity[2]! += sign * coords[2 * point]!;
    similarity[3]! += sign * coords[2 * point + 1]!;
    return;
  }
  const { roots, factors, constant } = reduction.derived[at]!;
  similarity[2]! += sign * constant[0];
  similarity[3]! += sign * constant[1];
  for (let k = 0; k < roots.length; k++) {
    const [fr, fi] = [sign * factors[2 * k]!, sign * factors[2 * k + 1]!];
    if (roots[k] === root) {
      similarity[0]! += fr;
      similarity[1]! += fi;
      continue;
    }
    const [zx, zy] = [coords[2 * roots[k]!]!, coords[2 * roots[k]! + 1]!];
    similarity[2]! += fr * zx - fi * zy;
    similarity[3]! += fr * zy + fi * zx;
  }
}

/** Carries the locus of w = α·u + β back to u. */
function carryBack(out: Float64Array): void {
  const [ar, ai, bx, by] = similarity as unknown as [number, number, number, number]; // it has four numbers
  const size = ar * ar + ai * ai;
  const wx = out[1]! - bx;
  const wy = out[2]! - by;
  out[1] = (wx * ar + wy * ai) / size;
  out[2] = (wy * ar - wx * ai) / size;
  const scale = Math.sqrt(size);
  if (out[0] === Shape.circle) {
    out[3] = out[3]! / scale;
    return;
  }
  const [ux, uy] = [out[3]!, out[4]!];
  out[3] = (ux * ar + uy * ai) / scale;
  out[4] = (uy * ar - ux * ai) / scale;
}

/** The locus in `out` holds for `point`; make it the root's. */
function backToRoot(reduction: Reduction, point: number, root: number, coords: Float64Array, out: Float64Array): void {
  if (point === root) return;
  similarity.fill(0);
  addPlace(reduction, point, root, coords, 1);
  carryBack(out);
}

/** A distance or fixed direction between two places: a locus of their difference. */
function differenceLocus(
  reduction: Reduction,
  p: number,
  a: number,
  root: number,
  coords: Float64Array,
  value: number,
  out: Float64Array,
  ray: boolean,
): void {
  similarity.fill(0);
  addPlace(reduction, p, root, coords, 1);
  addPlace(reduction, a, root, coords, -1);
  if (ray) straight(out, Shape.ray, 0, 0, Math.cos(value), Math.sin(value));
  else {
    out[0] = Shape.circle;
    out[1] = 0;
    out[2] = 0;
    out[3] = value;
  }
  carryBack(out);
}

/** A difference or sum of two places across a fixed direction: a line of either. */
function linearLocus(
  network: Network,
  reduction: Reduction,
  rule: number,
  root: number,
  coords: Float64Array,
  out: Float64Array,
): void {
  const { points } = reduction;
  const [nx, ny, offset] = [network.values[3 * rule]!, network.values[3 * rule + 1]!, network.values[3 * rule + 2]!];
  similarity.fill(0);
  addPlace(reduction, points[4 * rule]!, root, coords, 1);
  addPlace(reduction, points[4 * rule + 1]!, root, coords, network.kinds[rule] === RuleKind.halfway ? 1 : -1);
  straight(out, Shape.line, nx * offset, ny * offset, -ny, nx);
  carryBack(out);
}

/** A place as it stands, through the roots when it is derived. */
function placeX(reduction: Reduction, point: number, coords: Float64Array): [number, number] {
  similarity.fill(0);
  addPlace(reduction, point, -1, coords, 1);
  return [similarity[2]!, similarity[3]!];
}

function unit(x: number, y: number): [number, number] {
  const length = Math.hypot(x, y);
  return length > 0 ? [x / length, y / length] : [1, 0];
}

/** Ray whose direction is taken from a third point: for the far point itself, or for the reference point. */
function swungRay(
  reduction: Reduction,
  p: number,
  a: number,
  c: number,
  root: number,
  coords: Float64Array,
  angle: number,
  out: Float64Array,
): void {
  const forFar = uses(reduction, p, root);
  const [ax, ay] = placeX(reduction, a, coords);
  const [qx, qy] = placeX(reduction, forFar ? c : p, coords);
  const [ux, uy] = unit(qx - ax, qy - ay);
  const turn = forFar ? angle : -angle;
  const [cos, sin] = [Math.cos(turn), Math.sin(turn)];
  straight(out, Shape.ray, ax, ay, ux * cos - uy * sin, ux * sin + uy * cos);
  backToRoot(reduction, forFar ? p : c, root, coords, out);
}

function lineThrough(
  reduction: Reduction,
  three: readonly number[],
  root: number,
  coords: Float64Array,
  out: Float64Array,
): void {
  const free = three.find((point) => uses(reduction, point, root))!;
  const [from, to] = three.filter((point) => point !== free) as [number, number]; // the plan has checked: two others
  const [ax, ay] = placeX(reduction, from, coords);
  const [bx, by] = placeX(reduction, to, coords);
  const [ux, uy] = unit(bx - ax, by - ay);
  straight(out, Shape.line, ax, ay, ux, uy);
  backToRoot(reduction, free, root, coords, out);
}

/** A circle about the centre through the other point; for the centre itself, the upright bisector of the two. */
function sameRadiusLocus(
  reduction: Reduction,
  p: number,
  q: number,
  c: number,
  root: number,
  coords: Float64Array,
  out: Float64Array,
): void {
  if (uses(reduction, c, root)) {
    const [px, py] = placeX(reduction, p, coords);
    const [qx, qy] = placeX(reduction, q, coords);
    const [ux, uy] = unit(qx - px, qy - py);
    straight(out, Shape.line, (px + qx) / 2, (py + qy) / 2, -uy, ux);
    backToRoot(reduction, c, root, coords, out);
    return;
  }
  const free = uses(reduction, p, root) ? p : q;
  const [cx, cy] = placeX(reduction, c, coords);
  const [ox, oy] = placeX(reduction, free === p ? q : p, coords);
  out[0] = Shape.circle;
  out[1] = cx;
  out[2] = cy;
  out[3] = Math.hypot(ox - cx, oy - cy);
  backToRoot(reduction, free, root, coords, out);
}
