/**
 * How far an arbor leans under the pushes of its teeth: statics of a stick on two bearings that have play.
 *
 * Each push stands at the height of its teeth. By moments about the other bearing it is shared out to the two; each
 * pivot then lies against its hole on the side to which it is pushed, as far from the middle as the play lets it. The
 * line through the two is the arbor. A push beyond a bearing turns the load of the far one about, and the arbor leans
 * by both plays: 1° over 40 mm is 0.698 mm of play in all (lever formula).
 */
import type { Point } from '../../geometry/index.ts';
import type { PlayBound } from '../shake/lean.ts';

/** A push at a height: only its direction and its share of the others count. */
export interface LeanPush {
  readonly z: number;
  readonly x: number;
  readonly y: number;
}

/** How far an arbor leans. */
export interface Lean {
  /** Angle to the upright, radians, and how far the arbor stands aside at the heights asked, mm: the most of them. */
  readonly tilt: number;
  readonly aside: number;
}

/** A load of less than this share of all pushes leaves its pivot in the middle: it is rounding. */
const NO_LOAD = 1e-6;

/**
 * The lean under some pushes.
 *
 * @param bounds  plays of the bearings; the lowest and the highest of them carry
 * @param heights where the displacement is asked for, mm
 */
export function leanOf(bounds: readonly PlayBound[], pushes: readonly LeanPush[], heights: readonly number[]): Lean {
  const [low, high] = [lowestOf(bounds), highestOf(bounds)];
  if (!low || !high || pushes.length === 0) return { tilt: 0, aside: 0 };
  const span = high.z - low.z;
  const total = Math.max(...pushes.map(({ x, y }) => Math.hypot(x, y)));
  const share = (z: number): number => (span > 0 ? (z - low.z) / span : 0.5);
  const atHigh = pivotOf(high.play, pushes, ({ z }) => share(z), total);
  const atLow = pivotOf(low.play, pushes, ({ z }) => 1 - share(z), total);
  const tilt = span > 0 ? Math.atan(Math.hypot(atHigh.x - atLow.x, atHigh.y - atLow.y) / span) : 0;
  const at = (z: number): number =>
    Math.hypot(atLow.x + share(z) * (atHigh.x - atLow.x), atLow.y + share(z) * (atHigh.y - atLow.y));
  return { tilt, aside: Math.max(0, ...heights.map(at)) };
}

/** Where a pivot lies in its hole: against the side to which its share of the pushes goes. */
function pivotOf(play: number, pushes: readonly LeanPush[], share: (push: LeanPush) => number, total: number): Point {
  const x = pushes.reduce((sum, push) => sum + share(push) * push.x, 0);
  const y = pushes.reduce((sum, push) => sum + share(push) * push.y, 0);
  const load = Math.hypot(x, y);
  return load <= NO_LOAD * total ? { x: 0, y: 0 } : { x: (play * x) / load, y: (play * y) / load };
}

const lowestOf = (bounds: readonly PlayBound[]): PlayBound | undefined =>
  bounds.reduce<PlayBound | undefined>((a, b) => (!a || b.z < a.z ? b : a), undefined);

const highestOf = (bounds: readonly PlayBound[]): PlayBound | undefined =>
  bounds.reduce<PlayBound | undefined>((a, b) => (!a || b.z > a.z ? b : a), undefined);
