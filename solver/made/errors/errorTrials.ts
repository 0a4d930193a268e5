/** All errors at once, many times over: seeded normal errors, each ± two standard deviations. */

import type { Steps } from '../../steps.ts';
import type { ErrorModel } from './errorModel.ts';
import { seededNormal } from './seededNormal.ts';

/** How one figure came out over the trials, mm. */
export interface FigureTrials {
  readonly mean: number;
  /** Standard deviation about the mean, mm. */
  readonly sigma: number;
  readonly least: number;
  readonly most: number;
  /** Trials in which it was below `limit`. */
  readonly below: number;
}

/** How everything came out over the trials. */
export interface ErrorTrials {
  readonly trials: number;
  /** Trials in which every settled point could be planted; the figures count these. */
  readonly planted: number;
  readonly figures: readonly FigureTrials[];
  /** Covariance of the two coordinates of each place, mm², in the order of the model's points. */
  readonly covariances: readonly number[];
}

/** Trials between two tellings of progress. */
const TOLD_EVERY = 50;

/**
 * Runs the trials, telling how many are done; stop it by asking for no more.
 *
 * @param planned the figures without errors: sums are kept about them, so that no digits are lost
 * @param limits  for each figure what is counted as below
 */
export function* errorTrialSteps(
  model: ErrorModel,
  planned: Float64Array,
  limits: Float64Array,
  { trials, seed }: { readonly trials: number; readonly seed: number },
): Steps<number, ErrorTrials> {
  const { parts, figures } = model;
  const normal = seededNormal(seed);
  const errors = new Float64Array(parts.length);
  const count = figures.length;
  const [sum, squares, below] = [0, 0, 0].map(() => new Float64Array(count)) as [
    Float64Array,
    Float64Array,
    Float64Array, // three of them
  ];
  const cross = new Float64Array(count);
  const least = new Float64Array(count).fill(Number.POSITIVE_INFINITY);
  const most = new Float64Array(count).fill(Number.NEGATIVE_INFINITY);
  const isAcross = figures.map((figure) => figure.kind === 'place' && figure.axis === 0);
  let good = 0;
  for (let trial = 0; trial < trials; trial++) {
    if (trial % TOLD_EVERY === 0) yield trial;
    parts.forEach(({ source }, part) => {
      errors[part] = (source.plusMinus / 2) * normal();
    });
    const row = model.read(errors);
    if (!row) continue;
    good++;
    for (let k = 0; k < count; k++) {
      const value = row[k] as number; // as many as figures, and so below
      const off = value - (planned[k] as number);
      (sum[k] as number) += off;
      (squares[k] as number) += off * off;
      if (isAcross[k]) (cross[k] as number) += off * ((row[k + 1] as number) - (planned[k + 1] as number));
      if (value < (least[k] as number)) least[k] = value;
      if (value > (most[k] as number)) most[k] = value;
      if (value < (limits[k] as number)) (below[k] as number)++;
    }
  }
  return summed(figures.length);

  function summed(size: number): ErrorTrials {
    const n = Math.max(1, good);
    const mean = (k: number): number => (sum[k] ?? 0) / n;
    const told = Array.from({ length: size }, (_, k): FigureTrials => {
      const variance = Math.max(0, (squares[k] ?? 0) / n - mean(k) ** 2);
      const at = planned[k] ?? 0;
      const [low, high] = good > 0 ? [least[k] ?? at, most[k] ?? at] : [at, at];
      return { mean: at + mean(k), sigma: Math.sqrt(variance), least: low, most: high, below: below[k] ?? 0 };
    });
    const covariances = figures.flatMap((_, k) => (isAcross[k] ? [(cross[k] ?? 0) / n - mean(k) * mean(k + 1)] : []));
    return { trials, planted: good, figures: told, covariances };
  }
}
