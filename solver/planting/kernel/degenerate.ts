/**
 * Rules that lose their meaning at a place: a direction at its own centre, a line through points that coincide, an
 * opposite of the centre, a length of nothing.
 *
 * There every direction would do, so such a rule would "hold" at a place that it does not settle. A rule that is named
 * from a point therefore only holds where that point is at least `LEAST_ARM` away. Array kernel: indices come from a
 * checked network, hence the `!`.
 */
import { GAUGE, ONE_PLACE } from '../../tolerances.ts';
import { RuleKind } from '../network.ts';
import { isLinearPair } from './residual.ts';

/** Least distance to a point that a direction, line or radius is named from, mm: below every process in the workshop. */
export const LEAST_ARM = GAUGE;
/** Length up to which a distance has no direction, mm: what rounding leaves of a place ten metres out. */
export const NO_LENGTH = ONE_PLACE;

/** How much the shortest arm of a rule falls short of `LEAST_ARM`, mm; 0 where none does. Exact rules included. */
export function shortArm(
  kind: number,
  points: Int32Array,
  at: number,
  values: Float64Array,
  valueAt: number,
  coords: Float64Array,
): number {
  if (kind === RuleKind.distance) return values[valueAt]! > NO_LENGTH ? 0 : LEAST_ARM;
  // A share of a way of nothing is there as well.
  if (kind === RuleKind.onLine || kind === RuleKind.samePlace || kind === RuleKind.between) return 0;
  const [p, a, c] = [points[at]!, points[at + 1]!, points[at + 2]!];
  let arm = Number.POSITIVE_INFINITY;
  if (isLinearPair(kind)) {
    // Level in two directions, or its own image: there the two are one.
    arm = apart(coords, p, a);
  } else if (kind === RuleKind.ray) {
    arm = apart(coords, p, a);
    if (c >= 0) arm = Math.min(arm, apart(coords, c, a));
  } else if (kind === RuleKind.inLine) {
    arm = Math.min(apart(coords, a, c), apart(coords, p, a), apart(coords, p, c));
  } else if (kind === RuleKind.sameRadius) {
    arm = Math.min(apart(coords, p, c), apart(coords, a, c));
  } else {
    // Opposite lists p, c, q; turned lists p, q, c: the arm is from the second to the third in both.
    arm = apart(coords, a, c);
  }
  return arm < LEAST_ARM ? LEAST_ARM - arm : 0;
}

function apart(coords: Float64Array, i: number, j: number): number {
  const dx = coords[2 * i]! - coords[2 * j]!;
  const dy = coords[2 * i + 1]! - coords[2 * j + 1]!;
  return Math.sqrt(dx * dx + dy * dy);
}
