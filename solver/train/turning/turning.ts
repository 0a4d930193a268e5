/** What `turnMovement` gives: how every arbor turns, and what stands in the way. Plain data. */
import type { ArborId, IndicationId, WheelId } from '../../movement/ids.ts';
import type { Link, LockedRing, Sense, SharedAxes, TurningState } from './linkage.ts';
import type { Rational } from './rational.ts';
import type { NothingShown, TurningFault } from './turningFaults.ts';

/** How fast and which way an arbor turns. */
export interface Rate {
  /** Turns for one turn of the drive; + turns the way the drive turns, as seen from the marked face. */
  readonly turns: Rational;
  readonly sense: Sense;
  /** Time of one turn, seconds; absent where it stands still. */
  readonly periodSeconds?: number;
  /** The same, exact. */
  readonly period?: Rational;
}

/** One arbor: whether it turns, how, and what drives it. */
export interface ArborTurning {
  readonly id: ArborId;
  readonly state: TurningState;
  /** In space, against the plates. For `turns` and `still` only. */
  readonly rate?: Rate;
  readonly senseFromBehind?: Sense;
  /** For carried arbors: the arm, and the rate as seen by someone riding on it. */
  readonly carrier?: { readonly arm: ArborId; readonly rate?: Rate };
  /** The link that drives it, on the shortest way from the drive. */
  readonly drivenBy?: Link;
}

/** Something that keeps a train from turning as it should. */
export interface TurningProblem {
  /** Stable name of the fault. */
  readonly kind: 'drive' | 'locked' | 'notDriven' | 'open' | 'carrier' | 'depth' | 'sharedAxis' | 'indication';
  readonly severity: 'stops' | 'warns' | 'notes';
  readonly parts: readonly (ArborId | WheelId)[];
  readonly why: TurningFault;
}

/** How well one hand, ring or ball keeps its wanted period. */
export interface IndicationTurning {
  readonly id: IndicationId;
  readonly arbor: ArborId;
  /** Turns for one turn of the drive (without sign), wanted and achieved. */
  readonly wantedTurns?: Rational;
  readonly achievedTurns?: Rational;
  /** Seconds. */
  readonly wantedPeriod?: Rational;
  readonly achievedPeriod?: Rational;
  /** Achieved period / wanted period - 1, exact: + is slow. */
  readonly error?: Rational;
  readonly errorPpm?: number;
  /** + gains, - loses, seconds a day. */
  readonly gainSecondsPerDay?: number;
  /** Years until the hand is out by one day; absent where exact. */
  readonly yearsPerDay?: number;
  readonly withinTolerance?: boolean;
  readonly sense?: Sense;
  readonly wantedSense?: Sense;
  readonly senseIsWrong: boolean;
  /** Why it shows nothing. */
  readonly nothing?: NothingShown;
}

/** How a whole movement turns. */
export interface Turning {
  readonly drive?: { readonly arbor: ArborId; readonly periodSeconds: Rational; readonly sense: Sense };
  readonly arbors: ReadonlyMap<ArborId, ArborTurning>;
  /** Wheels turn with their arbors: the same records by wheel. */
  readonly wheels: ReadonlyMap<WheelId, ArborTurning>;
  readonly links: readonly Link[];
  readonly lockedRings: readonly LockedRing[];
  readonly sharedAxes: readonly SharedAxes[];
  readonly indications: readonly IndicationTurning[];
  /** Worst first. */
  readonly problems: readonly TurningProblem[];
}
