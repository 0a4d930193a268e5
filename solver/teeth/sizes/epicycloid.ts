/**
 * The epicycloid that forms a clock wheel's faces, and the addendum at which two faces meet.
 *
 * A circle of half the pinion's pitch radius rolls outside the wheel's pitch circle and traces the face; rolling
 * inside the pinion's pitch circle it traces a straight line, so the leaves have radial flanks (Cunynghame, "Time
 * and Clocks", 1906, figs. 78-80). Lengths here are in modules: wheel radius Z/2, generating circle n/4.
 * Checked in tests/published/cycloidal.test.ts.
 */

/** The two circles whose rolling makes an epicycloid. */
export interface Cycloid {
  /** Radius of the fixed circle and of the rolling circle, any one unit. */
  readonly fixed: number;
  readonly rolling: number;
}

/** Radius and polar angle of the epicycloid when the rolling circle's centre has turned by φ; cusp on +x. */
export function epicycloidAt(cycloid: Cycloid, phi: number): { readonly radius: number; readonly angle: number } {
  const { fixed, rolling } = cycloid;
  const centre = fixed + rolling;
  // Seen from the direction φ of the rolling centre: small differences keep their digits.
  const psi = (fixed * phi) / rolling;
  const along = centre - rolling * Math.cos(psi);
  const across = -rolling * Math.sin(psi);
  return { radius: Math.hypot(along, across), angle: phi + Math.atan2(across, along) };
}

/** Roll angle φ ≥ 0 at which the curve reaches a radius; `undefined` beyond its crown. A negative rolling radius rolls inside. */
export function rollAtRadius(cycloid: Cycloid, radius: number): number | undefined {
  const { fixed, rolling } = cycloid;
  // 1 − cos ψ from ρ² = (R+r)² + r² − 2r(R+r)cos ψ, as a half-angle so that small rolls keep their digits.
  const half = ((radius - fixed) * (radius + fixed)) / (4 * rolling * (fixed + rolling));
  if (half > 1) return undefined;
  return (2 * Math.asin(Math.sqrt(Math.max(0, half))) * Math.abs(rolling)) / fixed;
}

/** Roll angle φ at which the epicycloid's polar angle is `angle` > 0, by bracketing and bisection with secants. */
export function rollAtAngle(cycloid: Cycloid, angle: number): number {
  let low = 0;
  let high = 1e-6;
  while (epicycloidAt(cycloid, high).angle < angle) {
    low = high;
    high *= 2;
  }
  for (let i = 0; i < 200 && high - low > 1e-16 * high; i++) {
    const middle = (low + high) / 2;
    if (middle === low || middle === high) break;
    if (epicycloidAt(cycloid, middle).angle < angle) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}

/** Where the two faces of a tooth meet in a point. */
export interface PointedFace {
  /** Addendum at which the two faces of a tooth meet, × module. */
  readonly addendum: number;
  /** Roll angle there, radians. */
  readonly roll: number;
  /** Arc of action past the line of centres, in pitches. */
  readonly recess: number;
}

/**
 * The pointed tooth of a wheel that drives a pinion of `leaves`, each face an epicycloid from the pitch circle up.
 * @param thickness tooth thickness on the pitch circle × module (π/2: tooth = space)
 */
export function pointedFace(teeth: number, leaves: number, thickness = Math.PI / 2): PointedFace {
  const cycloid = { fixed: teeth / 2, rolling: leaves / 4 };
  const roll = rollAtAngle(cycloid, thickness / teeth);
  const addendum = epicycloidAt(cycloid, roll).radius - teeth / 2;
  return { addendum, roll, recess: (teeth * roll) / (2 * Math.PI) };
}

/** Action past the line of centres, in pitches, when the tip is cut at `addendum` (× module) up to the pointed one. */
export function recessTo(teeth: number, leaves: number, addendum: number): number | undefined {
  const roll = rollAtRadius({ fixed: teeth / 2, rolling: leaves / 4 }, teeth / 2 + addendum);
  return roll === undefined ? undefined : (teeth * roll) / (2 * Math.PI);
}
