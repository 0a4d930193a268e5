/** What is asked about a reading that cannot be, or is unlikely: kinds with the figures that they rest on, lengths in mm. */
import type { ReadingId } from '../../movement/ids.ts';

/** How a length may have been misread or mistyped. */
export type LengthSlip =
  | 'mmAsInches'
  | 'inchesAsMm'
  | 'pointTooFarRight'
  | 'pointTooFarLeft'
  | 'doubled' // a diameter for a radius, or both sides counted
  | 'halved'; // a radius for a diameter

/** How a place may have been misread: as a length, or with its axes taken otherwise. */
export type PlaceSlip =
  | Exclude<LengthSlip, 'doubled' | 'halved'>
  | 'otherFace'
  | 'yTurned'
  | 'bothTurned'
  | 'axesExchanged';

type At = readonly [x: number, y: number];

/** A reading that gives no length at all. */
export type Impossible =
  | { readonly kind: 'noFigure'; readonly reading: ReadingId }
  /** Over two pins it shows less than the pins alone allow. */
  | {
      readonly kind: 'withinPins';
      readonly reading: ReadingId;
      readonly shown: number;
      readonly pins: readonly [number, number];
      readonly least: number;
    }
  | { readonly kind: 'notAboveZero'; readonly reading: ReadingId; readonly length: number };

/** A length that is kept and not used until the maker answers. */
export type LengthDoubt =
  | {
      readonly kind: 'slip';
      readonly reading: ReadingId;
      readonly length: number;
      readonly planned: number;
      readonly slip: LengthSlip;
      readonly meant: number;
    }
  /** A tip diameter at which the teeth are cut away; `root` is the diameter of their roots. */
  | {
      readonly kind: 'noTeethLeft';
      readonly reading: ReadingId;
      readonly length: number;
      readonly root: number;
      readonly internal: boolean;
    }
  | { readonly kind: 'runOutBeyondTeeth'; readonly reading: ReadingId; readonly length: number; readonly depth: number }
  | {
      readonly kind: 'endShakeBeyondFrame';
      readonly reading: ReadingId;
      readonly length: number;
      readonly frame: number;
    };

/** A place that is kept and not used until the maker answers. */
export interface PlaceDoubt {
  readonly kind: 'placeSlip';
  readonly reading: ReadingId;
  readonly at: At;
  readonly planned: At;
  readonly slip: PlaceSlip;
  readonly meant: At;
}

/** Whatever is asked about a reading. */
export type ReadingDoubt = Impossible | LengthDoubt | PlaceDoubt;
