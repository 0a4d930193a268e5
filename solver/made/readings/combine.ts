/** Several readings of one length: the weighted mean, its ±, and the readings that do not belong with the rest. */
import type { ReadingId } from '../../movement/ids.ts';

/** One reading that is to be combined. */
export interface CombinedReadings {
  readonly id: ReadingId;
  /** mm, and its ± (two standard deviations). */
  readonly length: number;
  readonly plusMinus: number;
  /** The maker says that it is right as it stands: never named as one that does not belong. */
  readonly stands?: boolean;
}

/** What several readings of one length come to. */
export interface Combined {
  /** Weighted mean of the readings used, mm, and its ± (two standard deviations, widened where they scatter more than stated). */
  readonly length: number;
  readonly plusMinus: number;
  readonly used: readonly ReadingId[];
  readonly outliers: readonly { readonly id: ReadingId; readonly off: number }[];
}

/** A reading is named when it lies this many standard deviations from the median of all (common practice: three and a half). */
const OUTLIER = 3.5;
/** Median absolute deviation to standard deviation of a normal law. */
const MAD_TO_SIGMA = 1.4826;
/** Smallest ± that counts as a weight, mm: no gauge of the trade is better. */
const LEAST_PLUS_MINUS = 1e-4;

/**
 * Combines readings of the same length.
 *
 * With three readings or more, one that lies far from the median, judged by the stated ± and by the scatter of the rest,
 * is set aside and named, unless the maker has said that it stands; with two there is no telling which is wrong, and both
 * are kept.
 *
 * @returns undefined when there is no reading
 */
export function combineReadings(readings: readonly CombinedReadings[]): Combined | undefined {
  if (readings.length === 0) return undefined;
  const middle = median(readings.map((each) => each.length));
  const scatter = MAD_TO_SIGMA * median(readings.map((each) => Math.abs(each.length - middle)));
  const isFar = (each: CombinedReadings) =>
    !each.stands &&
    Math.abs(each.length - middle) > OUTLIER * Math.max(sigmaOf(each), readings.length > 3 ? scatter : 0);
  const outliers = readings.length < 3 ? [] : readings.filter(isFar);
  const kept = readings.filter((each) => !outliers.includes(each));
  const used = kept.length > 0 ? kept : readings;
  const weights = used.map((each) => 1 / sigmaOf(each) ** 2);
  const total = weights.reduce((sum, weight) => sum + weight, 0);
  // From the first reading, so that long lengths lose no digits.
  const base = used[0]?.length ?? 0;
  const length =
    base + used.reduce((sum, each, index) => sum + (each.length - base) * (weights[index] ?? 0), 0) / total;
  const chi = used.reduce((sum, each, index) => sum + (each.length - length) ** 2 * (weights[index] ?? 0), 0);
  const widened = used.length > 1 ? Math.max(1, Math.sqrt(chi / (used.length - 1))) : 1;
  return {
    length,
    plusMinus: (2 * widened) / Math.sqrt(total),
    used: used.map((each) => each.id),
    outliers: outliers.map((each) => ({ id: each.id, off: each.length - length })),
  };
}

const sigmaOf = ({ plusMinus }: CombinedReadings): number => Math.max(plusMinus, LEAST_PLUS_MINUS) / 2;

function median(values: readonly number[]): number {
  const sorted = [...values].sort((a, b) => a - b);
  const half = sorted.length >> 1;
  const upper = sorted[half] ?? 0;
  return sorted.length % 2 === 1 ? upper : ((sorted[half - 1] ?? upper) + upper) / 2;
}
