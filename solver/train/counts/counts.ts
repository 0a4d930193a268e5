/** What a search for counts takes and gives. Plain data, so that it travels to and from a worker. */
import type { Rational } from '../turning/rational.ts';

/** Least and greatest count, both allowed. */
export interface TeethRange {
  readonly from: number;
  readonly to: number;
}

/** What is asked of a search for counts. */
export interface CountsOptions {
  /** Wanted driven teeth over driver teeth: turns of the first arbor for one turn of the last ("29.530588853", "365/12"). */
  readonly ratio: number | string;
  /** Number of stages, or a range of it; 1 to 5. A worm counts as one. */
  readonly stages: number | TeethRange;
  /** Limits of the wheels that drive, and of the wheels that are driven. */
  readonly drivers: TeethRange;
  readonly driven: TeethRange;
  /** How many distinct ratios to give (default 10). */
  readonly best?: number;
  /** Trains listed for each ratio (default 3), and whether to count them all. */
  readonly trainsPerRatio?: number;
  readonly countTrains?: boolean;
  /** Largest prime factor of any count. */
  readonly largestPrime?: number;
  /** Counts that the maker's plates can divide, as a list or a question. */
  readonly divisions?: readonly number[] | ((teeth: number) => boolean);
  /** Wheels on hand, one entry for each wheel: only these are used, and each only once. */
  readonly onHand?: readonly number[];
  /** Only pairs without a common factor, so that every tooth meets every space. */
  readonly coprime?: boolean;
  /** Stages that must have one sum of teeth, because they join the same two axes: all, or groups of stage numbers from 0. */
  readonly equalSums?: 'all' | readonly (readonly number[])[];
  /** Limits of every stage's centre distance, mm, at this size of teeth: a module, mm, or a diametral pitch. */
  readonly centreDistance?: { readonly from?: number; readonly to?: number } & (
    | { readonly module: number }
    | { readonly diametralPitch: number }
  );
  /** Wanted sense of the last arbor against the first; with `idlers` (the default) an idler may be added for it. */
  readonly sense?: 'same' | 'reversed';
  readonly idlers?: boolean;
  /** The first stage is a worm of so many starts with a wheel within these limits. */
  readonly worm?: { readonly starts: TeethRange; readonly wheel: TeethRange };
  /** Largest error, parts per million (default 100000: a tenth). */
  readonly tolerancePpm?: number;
}

/** One driving and one driven wheel, or a worm with its wheel, by their counts. */
export interface Stage {
  /** Teeth of the driving wheel, or starts of the worm. */
  readonly driver: number;
  readonly driven: number;
  readonly worm?: true;
}

/** Stages one after another, and what a maker weighs about them. */
export interface CountedTrain {
  readonly stages: readonly Stage[];
  /** Sum of all teeth, the largest count, and the largest prime in any count. */
  readonly total: number;
  readonly largest: number;
  readonly largestPrime: number;
  /** Whether the last arbor turns against the first (an idler not reckoned in); for worms the hand decides. */
  readonly reversed?: boolean;
  /** Idlers needed for the wanted sense. */
  readonly idlers: number;
}

/** One ratio that was found, with trains that make it. */
export interface CountsRow {
  readonly ratio: Rational;
  /** Ten significant digits. */
  readonly digits: string;
  /** ratio / wanted - 1, exact; + is a period too long. */
  readonly error: Rational;
  readonly errorPpm: number;
  /** Fewest teeth first (of the first 64 found, where a ratio has very many). */
  readonly trains: readonly CountedTrain[];
  /** Distinct trains of this ratio, where asked for. */
  readonly trainCount?: number;
}

/** What is wrong with an option. */
export type CountsFault =
  | { readonly kind: 'notWhole'; readonly found: number; readonly from: number; readonly to: number }
  | { readonly kind: 'notInOrder'; readonly from: number | undefined; readonly to: number | undefined }
  | { readonly kind: 'notPositive'; readonly found: number }
  | { readonly kind: 'noRatio'; readonly found: number | string }
  /** A product of so many stages of so many teeth is no longer exact. */
  | { readonly kind: 'beyondExact'; readonly stages: number; readonly teeth: number }
  /** No count within these limits passes the other limits. */
  | { readonly kind: 'noneLeft' }
  | { readonly kind: 'notWithWorm' }
  | { readonly kind: 'groupsOfRange' }
  | { readonly kind: 'inTwoGroups' }
  /** A stage, counted from 0, that there is not. */
  | { readonly kind: 'noStage'; readonly found: number; readonly last: number }
  | { readonly kind: 'branchTooLong' }
  | { readonly kind: 'tooManyRatios'; readonly stages: number };

/** An option that cannot be, by its name, and why. */
export interface CountsProblem {
  readonly field: string;
  readonly why: CountsFault;
}

/** Why no train was found: the limits do not reach so far, or every train was tried. */
export type NoCounts =
  | { readonly kind: 'outOfReach'; readonly stages: number; readonly low: number; readonly high: number }
  | { readonly kind: 'allTried'; readonly withinPpm: number };

/** Ratios that were found, that there are none, what was wrong with the question, or that it was stopped. */
export type CountsResult =
  | { readonly kind: 'found'; readonly target: Rational; readonly rows: readonly CountsRow[] }
  /** Proved by going through all of them. `nearest` is the best that the limits allow, where there is one. */
  | { readonly kind: 'none'; readonly target: Rational; readonly why: NoCounts; readonly nearest?: CountsRow }
  | { readonly kind: 'refused'; readonly problems: readonly CountsProblem[] };

/** Share done, 0 to 1, and what is being done: trains of so many stages, their ratios, or what the hands share. */
export interface CountsProgress {
  readonly done: number;
  readonly doing: { readonly kind: 'stages' | 'ratios'; readonly stages: number } | { readonly kind: 'shared' };
}
