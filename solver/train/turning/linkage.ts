/** How the parts of a train move each other: senses, links, closed rings and shared axes. Plain data. */
import type { ArborId, CouplingId, RuleId, WheelId } from '../../movement/ids.ts';
import type { TurningKind } from '../../movement/schema.ts';
import type { Rational } from './rational.ts';

/** As seen looking down on the marked face; `still` where it does not turn. */
export type Sense = 'clockwise' | 'anticlockwise' | 'still';

/** One way in which two arbors turn each other, in the frame in which both centres stand still. */
export interface Link {
  /** The depth rule or the coupling; for a fixed pipe, none. */
  readonly id?: RuleId | CouplingId;
  readonly kind: 'depth' | TurningKind | 'fixed';
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
    /** The pair that can be cut otherwise because it meshes with nothing else, and the module that then fits, mm. */
    readonly recut?: { readonly wheels: readonly [WheelId, WheelId]; readonly module: number };
    /** The distance is the first depth's. */
    readonly fits: boolean;
  }[];
  readonly fits: boolean;
}
