/** Why parts cannot be made or put together as drawn: kinds with the parts and numbers of their sentences. Lengths mm. */
import type { ArborId, PlateId, PointId, PostId, WallId, WheelId } from '../../movement/ids.ts';
import type { Piece } from '../solids/piece.ts';

/** Faults of arbors and of what is fixed on them. */
type BodyCause =
  /** An arbor at least as thick as the roots of the wheel cut on it. */
  | {
      readonly kind: 'arborInRoots';
      readonly arbor: ArborId;
      readonly wheel: WheelId;
      readonly diameter: number;
      readonly roots: number;
    }
  | {
      readonly kind: 'arborInBore';
      readonly arbor: ArborId;
      readonly wheel: WheelId;
      readonly diameter: number;
      readonly bore: number;
    }
  /** What a pipe runs on is thicker than the bush or the bore that it runs in. */
  | {
      readonly kind: 'arborInPipe';
      readonly arbor: ArborId;
      readonly pipe: ArborId;
      readonly diameter: number;
      readonly bore: number;
    }
  /** An arbor that goes on, thicker than the hole, on both sides of its bearing. */
  | {
      readonly kind: 'bodyInHole';
      readonly arbor: ArborId;
      readonly plate: PlateId;
      readonly diameter: number;
      readonly bore: number;
    }
  /** Something fixed on an arbor that ends before it: `short` is what is missing. */
  | { readonly kind: 'notReached'; readonly arbor: ArborId; readonly piece: Piece; readonly short: number }
  | { readonly kind: 'bearingNotReached'; readonly arbor: ArborId; readonly plate: PlateId; readonly short: number }
  | { readonly kind: 'pivotThin'; readonly arbor: ArborId; readonly pivot: number; readonly least: number }
  | { readonly kind: 'rimThin'; readonly wheel: WheelId; readonly rim: number; readonly teeth: number };

/** Faults of posts between plates. */
type PostCause = {
  readonly kind: 'postShort' | 'postLong';
  readonly post: PostId;
  readonly plates: readonly [PlateId, PlateId];
  readonly length: number;
  readonly apart: number;
};

/** A support that does not touch its wall as it is said to, or stands in it. */
interface ContactCause {
  readonly kind: 'noContact';
  readonly post: PostId;
  readonly wall: WallId;
  readonly how: 'soldered' | 'screwed';
  readonly gap: number;
  readonly allowance: number;
}

/** Faults of what goes through plates. */
type HoleCause =
  /** Something goes through a plate whose hole there is smaller. */
  | {
      readonly kind: 'holeTight';
      readonly point: PointId;
      readonly plate: PlateId;
      readonly diameter: number;
      readonly hole: number;
    }
  /** Less metal between a hole and an edge than the hole wants. */
  | { readonly kind: 'nearEdge'; readonly point: PointId; readonly plate: PlateId };

/** Parts against the case. */
type InCaseCause =
  | { readonly kind: 'outsideCase'; readonly piece: Piece; readonly wall: WallId }
  /** A plate that does not go into the wall round it: too large by so much, or without play. */
  | { readonly kind: 'plateInWall'; readonly plate: PlateId; readonly wall: WallId; readonly play: number };

/** What is not there yet. */
type MissingCause =
  | { readonly kind: 'noBearing'; readonly arbor: ArborId }
  | { readonly kind: 'noEndShake'; readonly arbor: ArborId };

/** Why something is not buildable as drawn. */
export type BuildCause = BodyCause | PostCause | ContactCause | HoleCause | InCaseCause | MissingCause;
