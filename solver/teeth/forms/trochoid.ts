/**
 * The root of an involute wheel as the standard rack generates it: the curve left by the rounded corner of the rack's
 * tooth while the rack's pitch line rolls on the wheel's pitch circle. Where it bites into the involute the tooth is
 * undercut. ISO 53 racks; the contact normal of rack and wheel passes through the pitch point at every moment.
 *
 *      pitch point P at (R, 0); corner centre at depth d below the rolling line; γ: slope of the normal, α … π/2
 *      Q(γ) = P + (d / sin γ + ρ)·(−sin γ, cos γ),  rack shifted sideways by v = d / tan γ
 */
import { rootBetween } from './bracketed.ts';

/** What of rack and wheel decides the curve of the root. */
export interface RackTooth {
  readonly pitchRadius: number;
  readonly teeth: number;
  readonly alpha: number;
  /** Tooth thickness of the wheel on its pitch circle, mm. */
  readonly thickness: number;
  /** Depth of the rack's tip below the rolling line, mm. */
  readonly depth: number;
  /** Radius of the rack tooth's corner, mm. */
  readonly corner: number;
}

/**
 * The curve of the root: half the tooth's angle at a radius, radians, from the root circle to where the involute
 * takes over, mm.
 */
export interface Trochoid {
  readonly root: number;
  /** Radius where the corner's curve ends (γ = α). */
  readonly end: number;
  /**
   * How much farther the straight side of the rack's tooth reaches than it may, mm: above 0 it cuts away part of the
   * involute. The tool's own straight side counts, never the addendum of the wheel that it makes.
   */
  readonly undercutBy: number;
  readonly half: (radius: number) => number;
}

/** Depth and corner that the rack's tooth really has room for between its own flanks. */
export function roomOfRack(rack: RackTooth): { readonly depth: number; readonly corner: number } {
  const space = (2 * Math.PI * rack.pitchRadius) / rack.teeth - rack.thickness;
  const deepest = space / 2 / Math.tan(rack.alpha);
  const depth = Math.min(rack.depth, deepest);
  const widest = (space / 2 - depth * Math.tan(rack.alpha)) / Math.tan((Math.PI / 2 - rack.alpha) / 2);
  return { depth, corner: Math.max(0, Math.min(rack.corner, widest)) };
}

/** The generated root of a wheel. */
export function trochoidOf(rack: RackTooth): Trochoid {
  const { pitchRadius: R, alpha, teeth } = rack;
  const { depth, corner } = roomOfRack(rack);
  const space = (2 * Math.PI * R) / teeth - rack.thickness;
  const d = depth - corner;
  /** Sideways place of the corner's centre on the rack's tooth. */
  const c = space / 2 - d * Math.tan(alpha) - corner / Math.cos(alpha);
  const point = (gamma: number): readonly [number, number] => [
    R - d - corner * Math.sin(gamma),
    d / Math.tan(gamma) + corner * Math.cos(gamma),
  ];
  const radiusAt = (gamma: number): number => Math.hypot(...point(gamma));
  const root = R - depth;
  const end = radiusAt(alpha);
  const slopeAt = d > 0 ? steepening(R, d, corner, alpha) : bracketedSlope(radiusAt, alpha);
  return {
    root,
    end,
    undercutBy: d + corner * Math.sin(alpha) - R * Math.sin(alpha) ** 2,
    half: (radius) => {
      const gamma = radius <= root ? Math.PI / 2 : radius >= end ? alpha : slopeAt(radius);
      const [x, y] = point(gamma);
      const sideways = d / Math.tan(gamma);
      return Math.PI / teeth - (Math.atan2(y, x) - (sideways - c) / R);
    },
  };
}

/** γ at a radius by Newton on L = d / sin γ: r² = R² − 2Rd(1 + ρ/L) + (L + ρ)², which rises with L. */
function steepening(R: number, d: number, corner: number, alpha: number): (radius: number) => number {
  const longest = d / Math.sin(alpha);
  return (radius) => {
    const wanted = (radius - R) * (radius + R);
    // Start as if the corner were sharp, offset by the round.
    let L = Math.min(longest, Math.max(d, Math.sqrt(Math.max(0, wanted + 2 * R * d))));
    let [low, high] = [d, longest];
    for (let i = 0; i < 40; i++) {
      const over = -2 * R * d * (1 + corner / L) + (L + corner) ** 2 - wanted;
      if (over > 0) high = L;
      else low = L;
      const step = over / ((2 * R * d * corner) / (L * L) + 2 * (L + corner));
      let next = L - step;
      if (!(next >= low && next <= high)) next = (low + high) / 2;
      if (Math.abs(next - L) <= 1e-15 * L) break;
      L = next;
    }
    return Math.asin(Math.min(1, d / L));
  };
}

/** γ at a radius by bracketing, for corners whose centre lies on or above the rolling line. */
function bracketedSlope(radiusAt: (gamma: number) => number, alpha: number): (radius: number) => number {
  return (radius) => rootBetween((gamma) => radiusAt(gamma) - radius, alpha, Math.PI / 2);
}
