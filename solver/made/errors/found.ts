/** What is found before cutting, in the maker's terms. Plain data, so that it can be sent and written. */
import type { PointId, RuleId } from '../../movement/ids.ts';
import type { ErrorSource, StatedErrors } from './errorSources.ts';

/** What one error does to one depth, gap or check. */
export interface ErrorEffect {
  readonly on: 'depth' | 'gap' | 'check';
  /** Its number in the list of depths, gaps or checks. */
  readonly index: number;
  /**
   * Change for the error's ±, mm. Of a depth that of its distance, or where that stays (`room`) that of the room to
   * binding or letting go.
   */
  readonly change: number;
  readonly by: 'distance' | 'room' | 'gap' | 'off';
}

/** What one error does by itself. */
export type SourceFound = ErrorSource & {
  /** Most first. */
  readonly does: readonly ErrorEffect[];
  /** With this error alone the movement could not be planted one way or the other. */
  readonly breaks: boolean;
  /** Its part of the variance of all depths and gaps together, 0 … 1. */
  readonly share: number;
};

/** One source's part in what a depth, gap or check may be off by. */
export interface ErrorPartOf {
  /** Number in the list of sources. */
  readonly source: number;
  /** Part of the variance, 0 … 1. */
  readonly share: number;
}

/** How far one number may be off. */
export interface FigureSpread {
  readonly planned: number;
  /** ± to first order, and ± of the trials; two standard deviations, mm. */
  readonly plusMinus: number;
  readonly triedPlusMinus: number;
  readonly least: number;
  readonly most: number;
  /** Where it comes from, most first. */
  readonly from: readonly ErrorPartOf[];
}

/** How a depth may come out. */
export interface DepthFound extends FigureSpread {
  readonly rule: RuleId;
  /** Ends of the window of its teeth, mm; undefined where they cannot mesh. */
  readonly window: { readonly deepest: number; readonly deepestBy: string; readonly lostAt: number } | undefined;
  /** Shares of the trials, 0 … 1: binds or bottoms though its bearings give way; only because they give way it does not; lets go. */
  readonly tight: number;
  readonly bearingsGive: number;
  readonly loose: number;
}

/** How a gap may come out. */
export interface GapFound extends FigureSpread {
  readonly parts: readonly [string, string];
  /** As planted, without shake, mm; `planned` is at its worst with shake. */
  readonly asPlanted: number;
  readonly wanted: number;
  /** Shares of the trials, 0 … 1. */
  readonly fouls: number;
  readonly tooClose: number;
}

/** A rule that places nothing: how far it comes out from what it asks. */
export interface CheckFound extends FigureSpread {
  readonly rule: RuleId;
}

/** How a point may come out. */
export interface PlaceFound {
  readonly id: PointId;
  /** ± of the trials across and up, two standard deviations, mm. */
  readonly across: number;
  readonly up: number;
  /** Of the trials, mm²: [xx, xy, yy]. */
  readonly covariance: readonly [number, number, number];
}

/** All that was found before cutting. */
export interface ErrorsFound {
  readonly errors: StatedErrors;
  readonly trials: number;
  readonly seed: number;
  /** Trials in which every settled point could be planted; shares and spreads count these. */
  readonly planted: number;
  /** Points that could not be planted in the other trials, each counted where it was the first; most first. */
  readonly unplaced: readonly { readonly id: PointId; readonly trials: number }[];
  /** What may be off, the most telling first. */
  readonly sources: readonly SourceFound[];
  readonly depths: readonly DepthFound[];
  readonly gaps: readonly GapFound[];
  readonly checks: readonly CheckFound[];
  readonly places: readonly PlaceFound[];
  /** Rules whose stated ± is not tried: those that set no length. */
  readonly notTried: readonly RuleId[];
}
