/** What a remedy does: kinds with the parts and numbers that their sentences need. Lengths mm, angles radians. */

import type { Point } from '../../geometry/index.ts';
import type {
  ArborId,
  IndicationId,
  OpeningId,
  PlateId,
  PointId,
  PostId,
  RuleId,
  WallId,
  WheelId,
} from '../../movement/ids.ts';
import type { MovedArbor } from '../findings/cause.ts';
import type { Piece } from '../solids/piece.ts';

type Pair<Id> = readonly [Id, Id];
/** From which side metal is taken off. */
type Face = 'above' | 'below';

/** A collar that is put on an arbor or a pipe. */
export interface NewCollar {
  readonly arbor: ArborId;
  readonly diameter: number;
  readonly from: number;
  readonly to: number;
}

/** Changes of where something stands. */
type PlaceDeed =
  /** A post goes round the centre of its circle, + anticlockwise. */
  | { readonly kind: 'turnPost'; readonly post: PostId; readonly about: PointId | WallId; readonly by: number }
  | { readonly kind: 'otherCrossing'; readonly arbor: ArborId }
  | { readonly kind: 'moveArbors'; readonly moved: readonly MovedArbor[] }
  | { readonly kind: 'holdAt'; readonly arbor: ArborId; readonly to: Point; readonly distance: number }
  | { readonly kind: 'setDirection'; readonly arbor: ArborId; readonly direction: number; readonly distance: number };

/** A figure of a wheel's teeth that can be stated or left to form and table. */
export type ToothField =
  | 'tipDiameter'
  | 'addendum'
  | 'dedendum'
  | 'toothThickness'
  | 'thicknessFactor'
  | 'pressureAngle'
  | 'toothAngle'
  | 'profileShift'
  | 'trundleDiameter'
  | 'outerDiameter'
  | 'table';

/** Changes of a wheel's teeth alone. */
type ToothDeed =
  | { readonly kind: 'leaveToForm'; readonly wheel: WheelId; readonly fields: readonly ToothField[] }
  /** In the unit of the field: mm, or × module. */
  | { readonly kind: 'giveTeethFigure'; readonly wheel: WheelId; readonly field: ToothField; readonly value: number };

/** Changes of a wheel's count, size or body. */
type WheelDeed =
  /** Up where positive, with all that meshes with the first of them. */
  | { readonly kind: 'moveWheels'; readonly wheels: readonly WheelId[]; readonly by: number }
  | { readonly kind: 'thin'; readonly wheel: WheelId; readonly by: number; readonly from: Face }
  | { readonly kind: 'top'; readonly wheel: WheelId; readonly tipDiameter: number }
  | { readonly kind: 'cutAsPinion'; readonly wheel: WheelId }
  /** × module. */
  | { readonly kind: 'lowerAddendum'; readonly wheels: Pair<WheelId>; readonly addendum: number }
  | { readonly kind: 'cutInSizeOf'; readonly wheel: WheelId; readonly like: WheelId }
  | { readonly kind: 'moveToMeet'; readonly wheel: WheelId; readonly mate: WheelId; readonly by: number }
  | { readonly kind: 'giveTeeth'; readonly wheel: WheelId; readonly teeth: number; readonly instead: number }
  | { readonly kind: 'recut'; readonly wheels: Pair<WheelId>; readonly module: number; readonly instead: number }
  /** The angle of a tooth from the drawing's zero. */
  | { readonly kind: 'setPhase'; readonly wheel: WheelId; readonly phase: number };

/** Changes of how far apart two wheels stand. */
type DepthDeed =
  | { readonly kind: 'useCalculated' | 'holdDepth'; readonly wheels: Pair<WheelId>; readonly distance: number }
  | { readonly kind: 'leaveOutDepth'; readonly wheels: Pair<WheelId> }
  /** Bearings bushed to so much play on the diameter. */
  | { readonly kind: 'bush'; readonly arbors: readonly ArborId[]; readonly play: number };

/** Changes of a rule's value or duty. */
type RuleDeed =
  | { readonly kind: 'setLength'; readonly rule: RuleId; readonly length: number }
  | { readonly kind: 'setAngle'; readonly rule: RuleId; readonly angle: number };

/** Changes of arbors, posts and what is on them. */
type PieceDeed =
  /** A hand, arm, finger or pin, so far from its axis. */
  | { readonly kind: 'shortenSwept'; readonly piece: Piece; readonly farthest: number }
  | { readonly kind: 'moveSwept'; readonly piece: Piece; readonly by: number }
  | { readonly kind: 'turnHead'; readonly post: PostId; readonly diameter: number }
  | { readonly kind: 'shorten'; readonly piece: Piece; readonly by: number; readonly from: Face }
  | { readonly kind: 'putCollars'; readonly collars: readonly NewCollar[] }
  | { readonly kind: 'giveEndShake'; readonly arbor: ArborId; readonly endShake: number }
  | { readonly kind: 'makeNotch'; readonly opening: OpeningId }
  /** Turned to a diameter: the arbor itself, its pivots with their holes, a round plate. */
  | { readonly kind: 'turnArbor'; readonly arbor: ArborId; readonly diameter: number }
  | { readonly kind: 'turnPivots'; readonly arbor: ArborId; readonly pivot: number }
  | { readonly kind: 'turnPlate'; readonly plate: PlateId; readonly diameter: number }
  | { readonly kind: 'lengthenBearing'; readonly arbor: ArborId; readonly length: number }
  | { readonly kind: 'openHole'; readonly post: PostId; readonly hole: number }
  | { readonly kind: 'openBore'; readonly wheel: WheelId; readonly bore: number }
  | { readonly kind: 'leaveRim'; readonly wheel: WheelId; readonly rim: number }
  /** Its heights left blank, so that it reaches whatever it has to. */
  | { readonly kind: 'reach'; readonly part: ArborId }
  /** A post goes straight to its wall. */
  | { readonly kind: 'setAgainst'; readonly post: PostId; readonly wall: WallId; readonly by: number }
  | { readonly kind: 'makeLength'; readonly post: PostId; readonly length: number }
  | {
      readonly kind: 'putBearings';
      readonly arbor: ArborId;
      readonly plates: readonly PlateId[];
      readonly endShake: number;
    };

/** Changes of what turns which way. */
type TurningDeed =
  | { readonly kind: 'wantSense'; readonly indication: IndicationId; readonly sense: 'clockwise' | 'anticlockwise' }
  | { readonly kind: 'letTurn' | 'holdStill'; readonly arbor: ArborId }
  | { readonly kind: 'fixPipe'; readonly arbor: ArborId; readonly on: ArborId };

/** What one cure does. */
export type CureDeed = PlaceDeed | ToothDeed | WheelDeed | DepthDeed | RuleDeed | PieceDeed | TurningDeed;

/** Deeds that differ by less than a maker can set, mm or radians, are the same deed. */
const SAME = 1e-4;

/** Do two deeds do the same? */
export function isSameDeed(a: CureDeed, b: CureDeed): boolean {
  const rounded = (_: string, value: unknown): unknown =>
    typeof value === 'number' ? Math.round(value / SAME) : value;
  return JSON.stringify(a, rounded) === JSON.stringify(b, rounded);
}
