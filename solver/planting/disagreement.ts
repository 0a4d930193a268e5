/** Rules that cannot hold together: what disagrees, by how much, and what would cure it, as kinds and numbers. */
import type { PointId, RuleId } from '../movement/ids.ts';

/** Rules, and points of theirs, that cannot hold together as they stand. */
export interface Disagreement {
  readonly rules: readonly RuleId[];
  readonly points: readonly PointId[];
  /** mm */
  readonly gap: number;
  readonly cause: DisagreementCause;
  /** One rule and the value that would cure it: mm, or degrees of a direction. */
  readonly cure?: { readonly rule: RuleId; readonly value: number };
}

/** Why rules do not hold together. */
export type DisagreementCause = LociMiss | SetFails | Degenerate | NotKept | CheckOver;

/** Two loci of one point that do not meet. */
export interface LociMiss {
  readonly kind: 'miss';
  readonly how: 'apart' | 'inside' | 'concentric' | 'lineOutside' | 'behind' | 'parallel';
  /** The point; none where it is a place of the case. */
  readonly point?: PointId;
  /** The centre of the first locus. */
  readonly centre?: PointId;
  readonly loci: readonly [LocusTold, LocusTold];
  /** Lengths that would meet, the smallest change first. */
  readonly cures: readonly LengthCure[];
}

/** A locus by what a maker strikes it from; `edge`: of the case. */
export type LocusTold =
  | { readonly kind: 'arc' | 'ray'; readonly from: PointId }
  | { readonly kind: 'line'; readonly through: readonly [PointId, PointId] }
  | { readonly kind: 'gap'; readonly rule: RuleId }
  | { readonly kind: 'edge' | 'centreLine' }
  /** A line that is told from the centre line, through a point. */
  | { readonly kind: 'lineFrom'; readonly from: PointId };

/** A length, mm, that would let two loci meet, and the centre that it is taken from. */
export interface LengthCure {
  readonly rule: RuleId;
  readonly bound: 'atLeast' | 'atMost' | 'exactly';
  readonly length: number;
  readonly from?: PointId;
}

/** Any other set of rules, with what is implied and what cannot give way. */
export interface SetFails {
  readonly kind: 'set';
  readonly implied: readonly ImpliedRule[];
  readonly fixed: readonly { readonly point: PointId; readonly by: 'drilled' | 'held' }[];
  /** What one of the rules would measure without it, mm or degrees; or its two points stand at one place. */
  readonly without?:
    | { readonly kind: 'length' | 'angle'; readonly rule: RuleId; readonly value: number }
    | { readonly kind: 'onePlace' };
}

/** Rules that would bring a point onto the one that a direction, a line or a radius of theirs is named from. */
export interface Degenerate {
  readonly kind: 'degenerate';
  readonly implied: readonly ImpliedRule[];
}

/** What holds without a rule of its own. */
export interface ImpliedRule {
  readonly kind: 'pipe' | 'slide' | 'drilled';
  readonly point: PointId;
}

/** A rule that asks nothing, because it cannot be asked. */
export interface NotKept {
  readonly kind: 'notKept';
  readonly why: NotKeptCause;
}

/** Why a rule cannot be asked; lengths in mm. */
export type NotKeptCause =
  | { readonly kind: 'missing'; readonly what: 'point' | 'wheel' | 'part' }
  | { readonly kind: 'twice'; readonly point: PointId }
  /** A depth whose distance is nothing or less. */
  | { readonly kind: 'noDistance'; readonly distance: number }
  /** Both parts of a gap belong to the case; or the edge that it names is not there. */
  | { readonly kind: 'bothFixed' | 'noEdge' }
  /** Inside a ring: the greatest gap that there is room for. */
  | { readonly kind: 'noRoom'; readonly most: number }
  /** Fewer than two lengths of the point that count: nothing is to be shared. */
  | { readonly kind: 'fewLengths' }
  /** A rule that it names is no length of its point. */
  | { readonly kind: 'noLengthOfPoint'; readonly rule: RuleId }
  /** Too large in radius to stand inside the ring at all. */
  | { readonly kind: 'tooLarge'; readonly by: number };

/**
 * A rule that only checks and is over. The places stand; `rules` names it first, then the rules that it cannot hold with,
 * of which any may be the wrong one.
 */
export interface CheckOver {
  readonly kind: 'over';
  readonly check: RuleId;
  /** Other checks that are over by the same wrong number: the cure puts them right as well. */
  readonly also: readonly RuleId[];
  /** What it may miss by, mm: its ±, or what careful work leaves where none is stated. */
  readonly allowed: number;
  readonly implied: readonly ImpliedRule[];
  /** What it measures where the points stand, mm or degrees; none for a rule without a number. */
  readonly measures?: { readonly kind: 'length' | 'angle'; readonly value: number };
}
