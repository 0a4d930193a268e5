/** The error ellipse of a covariance. */
import type { Spread } from '../placed.ts';

/** Root of the 95 % quantile of χ² with two freedoms, √(−2·ln 0.05): published tables, here from its closed form. */
const ROOT_CHI2_95 = Math.sqrt(-2 * Math.log(0.05));

/**
 * Axes and direction of a covariance [xx, xy, yy], mm².
 *
 * Source: eigenvalues of a symmetric 2 × 2 matrix; the smaller as determinant over the greater, so that a needle-like
 * ellipse keeps the digits of its width.
 */
export function spreadOfCovariance(xx: number, xy: number, yy: number): Spread {
  const greater = (xx + yy) / 2 + Math.hypot((xx - yy) / 2, xy);
  const lesser = greater > 0 ? Math.max(0, (xx * yy - xy * xy) / greater) : 0;
  const major = Math.sqrt(greater);
  const minor = Math.sqrt(lesser);
  return {
    covariance: [xx, xy, yy],
    major,
    minor,
    azimuth: 0.5 * Math.atan2(2 * xy, xx - yy),
    major95: ROOT_CHI2_95 * major,
    minor95: ROOT_CHI2_95 * minor,
  };
}
