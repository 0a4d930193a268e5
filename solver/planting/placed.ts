/** The placed movement: what planting gives, in the maker's terms. Everything downstream starts from it. */
import type { Point } from '../geometry/index.ts';
import type { PointId, RuleId } from '../movement/ids.ts';
import type { Movement } from '../movement/schema.ts';
import type { Disagreement } from './disagreement.ts';

export type PlaceState = 'planted' | 'loose' | 'contested';

/** An error ellipse. ± in the movement is two standard deviations; these are one. */
export interface Spread {
  /** Covariance, mm²: [xx, xy, yy]. */
  readonly covariance: readonly [number, number, number];
  /** Standard deviations along the axes, mm, and the direction of the greater, radians. */
  readonly major: number;
  readonly minor: number;
  readonly azimuth: number;
  /** Half axes of the 95 % ellipse, mm (× 2.4477, the root of the χ² quantile with two freedoms). */
  readonly major95: number;
  readonly minor95: number;
}

/** Where a point is, how it came there, and whether it is settled. */
export interface Place extends Point {
  readonly id: PointId;
  readonly state: PlaceState;
  /**
   * Planted, but hardly: `touching` where its arcs only touch (no motion, but a small error moves it far), `barely`
   * where the rules resist a motion by less than a millionth of what they resist most.
   */
  readonly doubt?: 'touching' | 'barely' | undefined;
  /** Rules that place it, in the order a maker would strike them. */
  readonly placedBy: readonly RuleId[];
  /** Points placed directly from this one. */
  readonly hangsOn: readonly PointId[];
  /** Directions (unit vectors) in which it can still move: none, one or two. */
  readonly free: readonly Point[];
  /** The other crossing of its two loci. */
  readonly other?: Point | undefined;
  /** Angle of the two loci, radians. */
  readonly crossingAngle?: number | undefined;
  /** How far 0.01 mm more in each placing length moves it, mm, in the order of `placedBy`. */
  readonly movedBy: readonly number[];
  /** Undefined for places that are not settled, and where no ± reaches them. */
  readonly spread?: Spread | undefined;
}

/** How one rule came out. */
export interface RuleOutcome {
  readonly id: RuleId;
  /** Residual, mm (0 for a rule left out). */
  readonly missBy: number;
  /** `checks`: it places nothing, and misses by no more than it may; `disagrees`: it cannot hold, or its check is over. */
  readonly role: 'places' | 'checks' | 'disagrees' | 'leftOut';
  /**
   * What it is for, whether it holds or not: `told` to check by the maker; `released` by a drilled place, which stands as it
   * is; `checks` what the rules before it settle.
   */
  readonly duty: 'places' | 'checks' | 'told' | 'released' | 'leftOut';
  /** What a rule that checks may miss by, mm. */
  readonly allowed?: number;
  /** It is over because of a drilled place, and the maker lets it stand. */
  readonly stands?: true;
  /** For rules that set a length: the length that was used, mm, and its ± (two standard deviations). */
  readonly length?: number;
  readonly plusMinus?: number;
  /** For depths: the three values side by side, mm. */
  readonly calculated?: number;
  readonly measured?: number;
  readonly held?: number;
}

/** How one point is made, from points already there. */
export interface ConstructionStep {
  readonly kind: 'given' | 'derived' | 'crossing' | 'block' | 'loose';
  readonly points: readonly PointId[];
  readonly rules: readonly RuleId[];
}

/** A movement with the place of every point. */
export interface PlacedMovement {
  readonly movement: Movement;
  readonly places: ReadonlyMap<PointId, Place>;
  readonly rules: ReadonlyMap<RuleId, RuleOutcome>;
  readonly order: readonly ConstructionStep[];
  readonly freeMotions: number;
  /** One map of displacements per free motion (largest displacement 1). */
  readonly motions: readonly ReadonlyMap<PointId, Point>[];
  readonly disagreements: readonly Disagreement[];
  /** ± (two standard deviations) of the distance between two points, mm; undefined when no ± reaches them. */
  readonly plusMinusBetween: (a: PointId, b: PointId) => number | undefined;
}
