/**
 * One rule's residual and gradient.
 *
 * A residual is a length in mm (an angle times its radius), so one bound means one thing for every kind, and the
 * gradient has no unit. Array kernel: indices come from a checked network, hence the `!`.
 */
import { RuleKind } from '../network.ts';

/** Rule kinds below this one are equations to solve; from it on they are merged or eliminated exactly. */
export const FIRST_EXACT_KIND = RuleKind.samePlace;

const PI = Math.PI;
const TURN = 2 * Math.PI;

/**
 * Residual of one rule in mm, with its gradient by each of its (up to four) points.
 *
 * @param kind one of `RuleKind`, below `FIRST_EXACT_KIND`
 * @param points point indices, four a rule; `at` is the rule's first position in it
 * @param values three numbers a rule; `valueAt` is the rule's first position in it
 * @param coords places of all points
 * @param grad eight numbers to fill: d r / d (x, y) of each point in the rule's order; `undefined` when not wanted
 */
export function residualOf(
  kind: number,
  points: Int32Array,
  at: number,
  values: Float64Array,
  valueAt: number,
  coords: Float64Array,
  grad?: Float64Array,
): number {
  const p = points[at]!;
  const v0 = values[valueAt]!;
  const px = coords[2 * p]!;
  const py = coords[2 * p + 1]!;
  if (kind === RuleKind.onLine) {
    const nx = v0;
    const ny = values[valueAt + 1]!;
    if (grad) {
      grad[0] = nx;
      grad[1] = ny;
    }
    return nx * px + ny * py - values[valueAt + 2]!;
  }
  const a = points[at + 1]!;
  const ax = coords[2 * a]!;
  const ay = coords[2 * a + 1]!;
  if (isLinearPair(kind)) return linearResidual(kind, px, py, ax, ay, v0, values, valueAt, grad);
  const dx = px - ax;
  const dy = py - ay;
  if (kind === RuleKind.distance) {
    const d = Math.sqrt(dx * dx + dy * dy);
    if (grad) {
      // Two points at one place have no direction; any one will part them.
      const ux = d > 0 ? dx / d : 1;
      const uy = d > 0 ? dy / d : 0;
      grad[0] = ux;
      grad[1] = uy;
      grad[2] = -ux;
      grad[3] = -uy;
    }
    return d - v0;
  }
  const c = points[at + 2]!;
  if (kind === RuleKind.ray) return rayResidual(dx, dy, ax, ay, c, v0, coords, grad);
  const cx = coords[2 * c]!;
  const cy = coords[2 * c + 1]!;
  return kind === RuleKind.inLine
    ? inLineResidual(dx, dy, cx - ax, cy - ay, grad)
    : sameRadiusResidual(px - cx, py - cy, ax - cx, ay - cy, grad);
}

/** Is it one of the kinds that say where the difference or the sum of two places lies across a fixed direction? */
export function isLinearPair(kind: number): boolean {
  return kind >= RuleKind.level && kind <= RuleKind.halfway;
}

/** Difference or sum of two places across a fixed direction. */
function linearResidual(
  kind: number,
  px: number,
  py: number,
  ax: number,
  ay: number,
  nx: number,
  values: Float64Array,
  valueAt: number,
  grad: Float64Array | undefined,
): number {
  const ny = values[valueAt + 1]!;
  const sign = kind === RuleKind.halfway ? 1 : -1;
  if (grad) {
    grad[0] = nx;
    grad[1] = ny;
    grad[2] = sign * nx;
    grad[3] = sign * ny;
  }
  return nx * (px + sign * ax) + ny * (py + sign * ay) - values[valueAt + 2]!;
}

/** Angle off the ray times the radius: it grows all the way round, so a place behind the centre is never accepted. */
function rayResidual(
  dx: number,
  dy: number,
  ax: number,
  ay: number,
  r: number,
  angle: number,
  coords: Float64Array,
  grad: Float64Array | undefined,
): number {
  const radius = Math.sqrt(dx * dx + dy * dy);
  let ex = Math.cos(angle);
  let ey = Math.sin(angle);
  let arm = 0;
  if (r >= 0) {
    const rx = coords[2 * r]! - ax;
    const ry = coords[2 * r + 1]! - ay;
    arm = Math.sqrt(rx * rx + ry * ry);
    const wx = arm > 0 ? rx / arm : 1;
    const wy = arm > 0 ? ry / arm : 0;
    const turned = ex * wx - ey * wy;
    ey = ex * wy + ey * wx;
    ex = turned;
    if (grad) {
      // The reference point swings the ray: radius / arm of its own sideways step.
      const lever = arm > 0 ? radius / arm : 0;
      grad[4] = wy * lever;
      grad[5] = -wx * lever;
    }
  }
  const off = radius > 0 ? Math.atan2(ex * dy - ey * dx, ex * dx + ey * dy) : 0;
  if (grad) {
    const ux = radius > 0 ? dx / radius : ex;
    const uy = radius > 0 ? dy / radius : ey;
    grad[0] = ux * off - uy;
    grad[1] = uy * off + ux;
    const pulls = r >= 0;
    grad[2] = -grad[0]! - (pulls ? grad[4]! : 0);
    grad[3] = -grad[1]! - (pulls ? grad[5]! : 0);
  }
  return radius * off;
}

/** Signed distance of p from the line through a and b, with d = p - a and (lx, ly) = b - a. */
function inLineResidual(dx: number, dy: number, lx: number, ly: number, grad: Float64Array | undefined): number {
  const length = Math.sqrt(lx * lx + ly * ly);
  const ux = length > 0 ? lx / length : 1;
  const uy = length > 0 ? ly / length : 0;
  if (grad) {
    const share = length > 0 ? (ux * dx + uy * dy) / length : 0;
    grad[0] = -uy;
    grad[1] = ux;
    grad[2] = uy * (1 - share);
    grad[3] = -ux * (1 - share);
    grad[4] = uy * share;
    grad[5] = -ux * share;
  }
  return ux * dy - uy * dx;
}

/** |c p| - |c q| from the two arms (gx, gy) = p - c and (hx, hy) = q - c. */
function sameRadiusResidual(gx: number, gy: number, hx: number, hy: number, grad: Float64Array | undefined): number {
  const g = Math.sqrt(gx * gx + gy * gy);
  const h = Math.sqrt(hx * hx + hy * hy);
  if (grad) {
    grad[0] = g > 0 ? gx / g : 1;
    grad[1] = g > 0 ? gy / g : 0;
    grad[2] = h > 0 ? -hx / h : -1;
    grad[3] = h > 0 ? -hy / h : 0;
    grad[4] = -grad[0]! - grad[2]!;
    grad[5] = -grad[1]! - grad[3]!;
  }
  return g - h;
}

/** How many points a kind of rule uses. */
export function pointsOfKind(kind: number, third: number): number {
  if (kind === RuleKind.onLine) return 1;
  if (kind === RuleKind.distance || kind === RuleKind.samePlace || isLinearPair(kind)) return 2;
  if (kind === RuleKind.ray && third < 0) return 2;
  return 3;
}

/** An angle brought into (-π, π]. */
export function wrapAngle(angle: number): number {
  const turned = angle - TURN * Math.round(angle / TURN);
  return turned <= -PI ? turned + TURN : turned;
}
