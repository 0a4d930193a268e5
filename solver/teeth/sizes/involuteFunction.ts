/** The involute function and its inverse: inv α = tan α − α (ISO 21771, 4.3). */

/**
 * inv α = tan α − α, α in radians, 0 ≤ α < π/2.
 *
 * Below 0.05 rad the difference would lose digits, so the series α³/3 + 2α⁵/15 + … is summed instead
 * (terms to α¹³; the next is under 1e-19 of the first there).
 */
export function involute(alpha: number): number {
  if (Math.abs(alpha) > 0.05) return Math.tan(alpha) - alpha;
  const q = alpha * alpha;
  return (
    alpha * q * (1 / 3 + q * (2 / 15 + q * (17 / 315 + q * (62 / 2835 + q * (1382 / 155925 + q * (21844 / 6081075))))))
  );
}

/**
 * The angle whose involute is `value`, radians; `undefined` for a negative value (no such angle).
 * Newton from a start that lies above the root, where the function is convex, so it converges from one side.
 */
export function involuteAngle(value: number): number | undefined {
  if (!(value >= 0)) return undefined;
  if (value === 0) return 0;
  // Small angles: inv ≈ α³/3. Large ones: tan α ≈ value + π/2.
  let alpha = Math.min(Math.cbrt(3 * value), Math.atan(value + Math.PI / 2));
  for (let i = 0; i < 60; i++) {
    const tan = Math.tan(alpha);
    const step = (involute(alpha) - value) / (tan * tan);
    alpha -= step;
    if (Math.abs(step) <= 1e-16 + 1e-15 * alpha) break;
  }
  return alpha;
}
