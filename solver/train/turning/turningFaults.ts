/** What keeps a train from turning as it should: kinds, ids and numbers; words make the sentences and remedies. */
import type { ArborId, IndicationId, WheelId } from '../../movement/ids.ts';
import type { TurningKind } from '../../movement/schema.ts';
import type { LockedRing, Sense, SharedAxes, TurningState } from './linkage.ts';
import type { Rational } from './rational.ts';

/** The drive is missing, or cannot be reckoned with. */
type DriveFault =
  | { readonly kind: 'noDrive' }
  | { readonly kind: 'driveMissing' }
  /** As the file states it: not above 0, or no number. */
  | { readonly kind: 'drivePeriod'; readonly value: number };

/** A ring that holds itself fast, or a drive that is held. */
type LockFault =
  | { readonly kind: 'ringLocked'; readonly ring: LockedRing }
  /** Joined by teeth to arbors that never turn; none where carriers and depths hold each other. */
  | { readonly kind: 'driveHeld'; readonly drive: ArborId; readonly fixed: readonly ArborId[] };

/** An arm that cannot carry what it is said to. */
type CarrierFault =
  /** What it carries is the arm itself, or stands on its axis. */
  | { readonly kind: 'carriesItself'; readonly arm: ArborId; readonly carried: ArborId }
  | { readonly kind: 'twoArms'; readonly carried: ArborId; readonly arms: readonly [ArborId, ArborId] }
  | { readonly kind: 'armsInCircle'; readonly arms: readonly ArborId[] }
  | { readonly kind: 'leavesEachOther'; readonly carried: ArborId; readonly other: ArborId; readonly arm: ArborId }
  | { readonly kind: 'armsApart'; readonly arbors: readonly [ArborId, ArborId] };

/** What joins two arbors: a depth rule or a coupling, or a pipe that turns with its arbor. */
export type Joining = 'depth' | TurningKind | 'pipe';

/** Two wheels, or an arbor and a wheel, that cannot turn each other. */
type MeshFault =
  /** A wheel or an arbor that it names is not in the movement. */
  | { readonly kind: 'partMissing'; readonly joining: Joining }
  | { readonly kind: 'withItself'; readonly wheel: WheelId }
  | { readonly kind: 'onOneArbor'; readonly wheels: readonly [WheelId, WheelId]; readonly arbor: ArborId }
  | { readonly kind: 'onOneAxis'; readonly wheels: readonly [WheelId, WheelId] }
  | { readonly kind: 'bothInternal'; readonly wheels: readonly [WheelId, WheelId] }
  /** The wheel, then the ring. */
  | {
      readonly kind: 'ringTooFew';
      readonly wheels: readonly [WheelId, WheelId];
      readonly teeth: readonly [number, number];
    }
  | { readonly kind: 'turnsItself'; readonly arbor: ArborId; readonly wheel: WheelId }
  | { readonly kind: 'ridesOnNone'; readonly arbor: ArborId };

/** Why a hand, ring or ball shows nothing. */
export type NothingShown =
  | { readonly kind: 'arborMissing' }
  | { readonly kind: 'nothingDrives' }
  | { readonly kind: 'periodAndRatio' }
  | { readonly kind: 'neither' }
  | { readonly kind: 'badPeriod'; readonly value: number }
  | { readonly kind: 'badRatio'; readonly ratio: string }
  | {
      readonly kind: 'arborStands';
      readonly arbor: ArborId;
      readonly state: TurningState;
      /** Seconds. */
      readonly wantedPeriod: Rational;
    };

/** A hand, ring or ball that shows nothing, or the wrong thing. */
type IndicationFault = { readonly indication: IndicationId } & (
  | { readonly kind: 'showsNothing'; readonly why: NothingShown }
  | { readonly kind: 'wrongSense'; readonly sense: Sense; readonly wanted: Sense }
  | { readonly kind: 'outOfTolerance'; readonly error: Rational; readonly allowedPpm: number }
);

/** Anything that keeps a train from turning as it should. */
export type TurningFault =
  | DriveFault
  | LockFault
  | CarrierFault
  | MeshFault
  | IndicationFault
  | { readonly kind: 'notDriven'; readonly arbors: readonly ArborId[] }
  /** Joined to the drive by a carrier whose other side is free. */
  | { readonly kind: 'open'; readonly arbors: readonly ArborId[] }
  | { readonly kind: 'axesDisagree'; readonly shared: SharedAxes };
