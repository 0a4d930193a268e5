/**
 * Where duties are judged: the sketch, nudged off coincidences, with every value taken out.
 *
 * Which rules settle what must not hang on a special position (three sketched points in a row, two at one place) nor on
 * any length. So each point is moved by a share of the sketch's own size that no drawing has by chance, and directions
 * are asked at the angle that they have there: what is left of a rule is how it would move its points.
 * Array kernel: indices come from a checked network, hence the `!`.
 */
import { type Network, RuleKind } from '../../network.ts';
import { placeDerived, type Reduction } from '../reduce.ts';

/** Part of the sketch's typical spacing by which points are moved: large enough to leave any special position well. */
const NUDGE = 0.23;

/** A number in (-1, 1) that goes with a place of a sequence and with nothing else. Source: 32-bit mixer by C. Wellons (public domain). */
function scattered(at: number): number {
  let x = Math.imul(at ^ (at >>> 16), 0x7feb352d);
  x = Math.imul(x ^ (x >>> 15), 0x846ca68b);
  x ^= x >>> 16;
  return (x >>> 0) / 2 ** 31 - 1;
}

/** Typical spacing of the sketch, mm: its extent over the root of the number of points; 1 for a sketch in one place. */
function spacingOf({ coords, pointCount }: Network): number {
  const low = [Number.POSITIVE_INFINITY, Number.POSITIVE_INFINITY];
  const high = [Number.NEGATIVE_INFINITY, Number.NEGATIVE_INFINITY];
  for (let k = 0; k < 2 * pointCount; k++) {
    low[k & 1] = Math.min(low[k & 1]!, coords[k]!);
    high[k & 1] = Math.max(high[k & 1]!, coords[k]!);
  }
  const extent = Math.max(high[0]! - low[0]!, high[1]! - low[1]!);
  return extent > 0 ? extent / Math.sqrt(pointCount) : 1;
}

/**
 * A copy of the network to judge duties in.
 *
 * @param attempt 0, 1, 2…: another nudge, where one left a doubt
 * @returns a network whose coordinates are nudged and whose directions are asked at the angle that they have there; the
 *   exact ties hold in `coords` by construction
 */
export function nudgedNetwork(network: Network, reduction: Reduction, attempt: number): Network {
  const { pointCount, ruleCount, kinds } = network;
  const coords = Float64Array.from(network.coords);
  const size = NUDGE * spacingOf(network);
  for (let i = 0; i < pointCount; i++) {
    if (!reduction.unknown[i]) continue;
    coords[2 * i]! += size * scattered(4 * i + 1 + attempt * 0x9e3779b1);
    coords[2 * i + 1]! += size * scattered(4 * i + 3 + attempt * 0x9e3779b1);
  }
  for (const derived of reduction.derived) placeDerived(derived, coords);
  const values = Float64Array.from(network.values);
  for (let r = 0; r < ruleCount; r++) {
    if (kinds[r] === RuleKind.ray) values[3 * r] = angleThere(reduction.points, 4 * r, coords);
  }
  return { ...network, coords, values };
}

/** The angle that a ray has at these places, so that its residual is zero and its gradient that of the angle alone. */
function angleThere(points: Int32Array, at: number, coords: Float64Array): number {
  const [p, a, r] = [points[at]!, points[at + 1]!, points[at + 2]!];
  const to = Math.atan2(coords[2 * p + 1]! - coords[2 * a + 1]!, coords[2 * p]! - coords[2 * a]!);
  if (r < 0) return to;
  return to - Math.atan2(coords[2 * r + 1]! - coords[2 * a + 1]!, coords[2 * r]! - coords[2 * a]!);
}
