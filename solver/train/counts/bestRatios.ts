/**
 * The best distinct ratios met so far, ranked by exact error.
 *
 * Errors are first compared as doubles with a slack that covers their rounding; whatever passes is ranked by whole
 * numbers of any size, so that the order and the last place are exact.
 */
import type { Steps } from '../../steps.ts';
import { compare, divide, magnitude, ONE, type Rational, rational, subtract } from '../turning/rational.ts';

/** Relative rounding of a double error reckoned from exact products: a few units in the last place (2^-52 each). */
export const ROUNDING = 4 * 2 ** -52;

/** A ratio with its distance from the wanted one. */
export interface RankedRatio {
  /** Driven over drivers, in lowest terms, as plain numbers and as a fraction. */
  readonly driven: number;
  readonly drivers: number;
  readonly ratio: Rational;
  /** ratio / target - 1, exact. */
  readonly error: Rational;
  /** The same without sign, as a double. */
  readonly size: number;
}

function commonFactor(a: number, b: number): number {
  let x = a;
  let y = b;
  while (y !== 0) [x, y] = [y, x % y];
  return x;
}

/** Keeps the nearest distinct ratios that are offered to it. */
export class BestRatios {
  readonly list: RankedRatio[] = [];
  /** Largest double error that may still enter. */
  bound: number;
  private readonly target: number;
  private readonly exact: Rational;
  private readonly keep: number;

  /**
   * @param target wanted driven/drivers, > 0
   * @param keep   how many distinct ratios to keep
   * @param within largest relative error that counts at all
   */
  constructor(exact: Rational, target: number, keep: number, within = Number.POSITIVE_INFINITY) {
    this.exact = exact;
    this.target = target;
    this.keep = keep;
    this.bound = within + ROUNDING;
  }

  /** Takes the ratio of two products if it is among the best. Both are whole numbers below 2^53. */
  offer(driven: number, drivers: number): void {
    const wanted = this.target * drivers;
    const size = Math.abs(driven - wanted) / wanted;
    if (size > this.bound || this.knows(driven, drivers, size)) return;
    const factor = commonFactor(driven, drivers);
    const ratio = rational(driven / factor, drivers / factor);
    const error = subtract(divide(ratio, this.exact), ONE);
    const entry = { driven: driven / factor, drivers: drivers / factor, ratio, error, size };
    const place = this.list.findIndex((other) => closer(entry, other));
    this.list.splice(place < 0 ? this.list.length : place, 0, entry);
    if (this.list.length > this.keep) this.list.length = this.keep;
    if (this.list.length === this.keep) {
      this.bound = Math.min(this.bound, (this.list[this.keep - 1] as RankedRatio).size + ROUNDING);
    } // just filled
  }

  /** Whether the ratio is in the list already: many pairs of products have the same one. */
  private knows(driven: number, drivers: number, size: number): boolean {
    for (const other of this.list) {
      if (Math.abs(other.size - size) > ROUNDING) continue;
      const times = drivers / other.drivers;
      if (Number.isInteger(times) && other.driven * times === driven) return true;
    }
    return false;
  }
}

/** Smaller error first; of two equally far on either side, the smaller fraction. */
function closer(a: RankedRatio, b: RankedRatio): boolean {
  const order = compare(magnitude(a.error), magnitude(b.error));
  return order < 0 || (order === 0 && a.drivers < b.drivers);
}

/** Pairs of products taken between two yields: about a millisecond of work. */
export const CHUNK = 1 << 16;

/**
 * Offers every pair of a driven and a driver product that can be among the best. Both lists rise, so one walk up
 * the drivers moves the place in the driven list only upwards.
 *
 * Yields the share done (0 to 1) about every millisecond, so that a worker can report and stop.
 */
export function* sweepProductsSteps(
  best: BestRatios,
  target: number,
  drivenList: Float64Array,
  driverList: Float64Array,
): Steps<number, void> {
  // Array kernel: indices stay inside the lists by the loop bounds.
  const count = drivenList.length;
  let at = 0;
  for (let d = 0; d < driverList.length; d++) {
    const drivers = driverList[d] as number;
    const wanted = target * drivers;
    while (at < count && (drivenList[at] as number) < wanted) at++;
    for (let up = at; up < count; up++) {
      const driven = drivenList[up] as number;
      if (driven - wanted > best.bound * wanted) break;
      best.offer(driven, drivers);
    }
    for (let down = at - 1; down >= 0; down--) {
      const driven = drivenList[down] as number;
      if (wanted - driven > best.bound * wanted) break;
      best.offer(driven, drivers);
    }
    if (d % CHUNK === CHUNK - 1) yield d / driverList.length;
  }
}
