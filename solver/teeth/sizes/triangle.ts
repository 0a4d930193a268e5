/**
 * Straight-sided (triangular) teeth, as on ancient instruments: the flanks of a tooth lie on two lines that meet at
 * the apex with the included angle 2g. Radii in one unit of choice. Checked in tests/published/cutters.test.ts.
 */

/** Distance of the apex from the wheel's centre for a tooth of half-angle `half` (radians) at a radius. */
export function apexRadius(radius: number, half: number, g: number): number {
  // Triangle centre–apex–flank point: the sine rule.
  return (radius * Math.sin(half + g)) / Math.sin(g);
}

/** Half-angle of the tooth at a radius ≤ apex; negative above it. */
export function triangleHalfAngle(radius: number, apex: number, g: number): number {
  return Math.asin(Math.max(-1, Math.min(1, (apex * Math.sin(g)) / radius))) - g;
}

/** Root radius at which teeth from one apex circle fill the whole pitch: neighbours meet at the root. */
export function fillingRoot(apex: number, teeth: number, g: number): number {
  return (apex * Math.sin(g)) / Math.sin(Math.PI / teeth + g);
}
