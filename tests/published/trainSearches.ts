/**
 * Twenty exhaustive searches for trains, as outside values.
 *
 * Source: an independent program (Python, exact fractions) that lists all products of driven wheels and all
 * products of drivers within the limits, compares the nearest for every driver product, and was confirmed with the
 * two lists exchanged. The three best distinct ratios each; `count` is the number of distinct unordered trains; up
 * to twelve trains are listed as driven / drivers. The first problem is Sandgren's (1990), whose answer
 * 16 x 19 / (43 x 49) is in the literature.
 */
import searches from './trainSearches.json' with { type: 'json' };

export interface TrainSearch {
  readonly problem: string;
  readonly target: string;
  readonly stages: number;
  readonly drivers: { readonly from: number; readonly to: number };
  readonly driven: { readonly from: number; readonly to: number };
  readonly best: readonly {
    readonly ratio: string;
    readonly error: number;
    readonly count: number;
    readonly trains: readonly string[];
  }[];
}

export const TRAIN_SEARCHES: readonly TrainSearch[] = searches;
