/** What can be wrong with a movement: kinds with the parts and numbers that their sentences need. Lengths mm, angles radians. */

import type { Point } from '../../geometry/index.ts';
import type { ArborId, OpeningId, PartId, PlateId, PointId, WheelId } from '../../movement/ids.ts';
import type { Disagreement } from '../../planting/index.ts';
import type { calculatedDepth, DepthWindow, NoContact, ToothTrouble } from '../../teeth/index.ts';
import type { TurningProblem } from '../../train/index.ts';
import type { Piece } from '../solids/piece.ts';
import type { BuildCause } from './buildCause.ts';

/** An arbor that goes to another place. */
export interface MovedArbor {
  readonly arbor: ArborId;
  readonly to: Point;
  readonly distance: number;
}

type Pair<Id> = readonly [Id, Id];

/** Two solids that come too near; the gap itself, its limit and its reading are the finding's. */
interface GapCause {
  readonly kind: 'gap';
  readonly pieces: Pair<Piece>;
  /** What decided: side by side, or one above the other. */
  readonly direction: 'plan' | 'height';
}

/** Faults of plates, openings and walls. */
type CaseCause =
  | { readonly kind: 'openingOutside' | 'openingAcross'; readonly opening: OpeningId; readonly plate: PlateId }
  | { readonly kind: 'openingsCross'; readonly openings: Pair<OpeningId>; readonly plate: PlateId };

/** Faults of pivots, arbors and the holes that they run in. */
type BearingCause =
  /** A pivot thicker than its arbor: no shoulder is left. */
  | { readonly kind: 'pivotThick'; readonly arbor: ArborId; readonly pivot: number; readonly diameter: number }
  /** A hole that leaves no metal at the edge; the finding's gap is negative by how much. */
  | { readonly kind: 'breaksOut'; readonly point: PointId; readonly plate: PlateId }
  | { readonly kind: 'holesMeet'; readonly points: Pair<PointId>; readonly plate: PlateId };

/** Faults of closed rings of depths. */
type RingCause =
  /** `closing`: where the loose arbors of the ring go for it to close; none where none is loose. */
  | {
      readonly kind: 'ringMisses';
      readonly ring: readonly ArborId[];
      readonly missTeeth: number;
      readonly closing?: readonly MovedArbor[];
    }
  /** It closes when a wheel is set on its arbor turned by so much, + anticlockwise. */
  | {
      readonly kind: 'ringSet';
      readonly ring: readonly ArborId[];
      readonly wheel: WheelId;
      readonly arbor: ArborId;
      readonly turn: number;
    };

/** How a depth fails with the shake of its arbors. */
export type DepthCause =
  | { readonly kind: 'noMesh'; readonly window: Exclude<DepthUnderShakeWindow, DepthWindow> }
  /** Too near by so much, run-out at its worst included where it counts, and the bearings give way by `play` only. */
  | {
      readonly kind: 'tooNear';
      readonly by: 'binding' | 'bottoming';
      readonly tooNear: number;
      readonly play: number;
      readonly runOut: boolean;
    }
  | { readonly kind: 'losesContact' | 'canLoseContact'; readonly tooFar: number }
  /** Tips stand on roots until the bearings give way. */
  | { readonly kind: 'bottomsAsPlanted'; readonly tooNear: number }
  /** Farther apart than flanks hand over evenly. */
  | { readonly kind: 'uneven'; readonly distance: number; readonly evenTo: number };

/** The window of a pair, or why its teeth have none. */
export type DepthUnderShakeWindow = DepthWindow | NoContact;

/** Faults of two wheels in mesh. */
type PairCause =
  | {
      readonly kind: 'sizes';
      readonly wheels: Pair<WheelId>;
      readonly calculated: Extract<ReturnType<typeof calculatedDepth>, { kind: 'mismatch' }>;
    }
  | { readonly kind: 'teeth'; readonly told: ToothTrouble }
  | { readonly kind: 'apartInHeight'; readonly wheels: Pair<WheelId>; readonly apart: number }
  | { readonly kind: 'underShake'; readonly wheels: Pair<WheelId>; readonly fault: DepthCause };

/** How a stack fails; the room that is left is the finding's gap, the stated end shake what is wanted. */
type StackCause =
  | { readonly kind: 'stackShort'; readonly arbor: ArborId }
  /** Errors of its lengths can use up the end shake: what is likely left, and at worst. */
  | {
      readonly kind: 'stackUsedUp';
      readonly arbor: ArborId;
      readonly lengths: number;
      readonly likely: number;
      readonly worst: number;
    }
  /** Nothing stops a pipe on a side. */
  | { readonly kind: 'pipeUnstopped'; readonly arbor: ArborId; readonly down: boolean; readonly up: boolean }
  | { readonly kind: 'pipeShort' | 'pipeLoose'; readonly arbor: ArborId; readonly between: Pair<Piece> }
  | {
      readonly kind: 'pipeUsedUp';
      readonly arbor: ArborId;
      readonly between: Pair<Piece>;
      readonly room: number;
      readonly likely: number;
      readonly worst: number;
    };

/** What is wrong in one finding. */
export type FindingCause =
  | GapCause
  | { readonly kind: 'disagreement'; readonly disagreement: Disagreement }
  | { readonly kind: 'turning'; readonly problem: TurningProblem }
  | RingCause
  | BearingCause
  | CaseCause
  | PairCause
  | StackCause
  | BuildCause
  /** An arbor that cannot be lifted out while a part of the frame stands over it. */
  | { readonly kind: 'heldDown'; readonly arbor: ArborId; readonly by: PartId };
