/** What `turnMovement` gives: how every arbor turns, and what stands in the way. Plain data. */
import type { ArborId, CouplingId, IndicationId, RuleId, WheelId } from '../../movement/ids.ts';
import type { Rational } from './rational.ts';
import type { NothingShown, TurningFault } from './turningFaults.ts';

/** As seen looking down on the marked face; `still` where it does not turn. */
export type Sense = 'clockwise' | 'anticlockwise' | 'still';

/** One way in which two arbors turn each other, in the frame in which both centres stand still. */
export interface Link {
  /** The depth rule or the coupling; for a fixed pipe, none. */
  readonly id?: RuleId | CouplingId;
  readonly kind: 'depth' | 'worm' | 'contrate' | 'stepped' | 'fixed';
  /** `from` drives `to`. */
  readonly from: ArborId;
  readonly to: ArborId;
  readonly fromWheel?: WheelId;
  readonly toWheel?: WheelId;
  /** Teeth that pass for one turn: teeth, starts of a worm, teeth moved by a finger; 1 and 1 for a fixed pipe. */
  readonly fromTeeth: number;
  readonly toTeeth: number;
  /** 1 where both turn the same way, -1 where they turn against each other. */
  readonly sense: 1 | -1;
  /** The arm on which both stand still; absent for the plates. */
  readonly arm?: ArborId;
}

/**
 * `turns` driven, its rate is known; `still` fixed, or its rate comes to nothing; `locked` in a ring that cannot
 * turn; `notDriven` nothing joins it to the drive; `open` joined to the drive through a carrier whose other side is
 * free, so that its rate is not settled.
 */
export type TurningState = 'turns' | 'still' | 'locked' | 'notDriven' | 'open';

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

/** A ring of arbors that hold each other fast. */
export interface LockedRing {
  /** In order round the ring. */
  readonly arbors: readonly ArborId[];
  readonly links: readonly Link[];
  /** `ratios` the counts disagree; `senses` the counts agree and the senses do not; `fixed` held by parts that never turn. */
  readonly kind: 'ratios' | 'senses' | 'fixed';
  /** Turns of the first arbor after going once round the ring, for one turn of it: anything but 1 locks. */
  readonly onceRound?: Rational;
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

/** Depths that join the same two axes, and so must have one centre distance. */
export interface SharedAxes {
  readonly depths: readonly {
    readonly rule: RuleId;
    readonly wheels: readonly [WheelId, WheelId];
    /** Sum of teeth (difference for an internal pair), module, mm, and calculated distance, mm. */
    readonly sum: number;
    readonly module: number;
    readonly distance: number;
    /** Distance less that of the first depth, mm: too deep (+: planted too close) by so much. */
    readonly misfit: number;
    /** Module that would fit the first depth's distance, mm. */
    readonly moduleThatFits: number;
    /** The distance is the first depth's. */
    readonly fits: boolean;
  }[];
  readonly fits: boolean;
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
