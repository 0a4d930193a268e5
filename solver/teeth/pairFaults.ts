/** What does not fit between two wheels, and why a pair has no contact: kinds, ids and numbers (mm, radians). */
import type { WheelId } from '../movement/ids.ts';
import type { Wheel } from '../movement/schema.ts';
import type { ToothFault } from './toothFaults.ts';

/** Why two wheels cannot mesh as they stand, whatever their distance. */
export type Mismatch = { readonly wheels: readonly [WheelId, WheelId] } & (
  | { readonly kind: 'twoRings' }
  /** The wheel, then the ring. */
  | { readonly kind: 'ringTooSmall'; readonly teeth: readonly [number, number] }
  | { readonly kind: 'onRingAxis' }
  /** `apart`: by how much the pitches differ, mm a tooth. */
  | {
      readonly kind: 'pitches';
      readonly sizes: readonly [Wheel['size'], Wheel['size']];
      readonly apart: number;
      /** The wheel that meshes with nothing else, and the size that fits it to the other; none where both mesh elsewhere. */
      readonly cut?: { readonly wheel: WheelId; readonly size: Wheel['size'] };
    }
  | { readonly kind: 'twoLanterns' }
  /** The lantern pinion, then the involute wheel. */
  | { readonly kind: 'involuteOnPins' }
  | { readonly kind: 'forms'; readonly forms: readonly [Wheel['form'], Wheel['form']] }
  /** `apart`: by how much the base pitches differ, mm. */
  | { readonly kind: 'pressureAngles'; readonly angles: readonly [number, number]; readonly apart: number }
  /** × module; the sum must be on the stated side of the limit. */
  | {
      readonly kind: 'shifts';
      readonly shifts: readonly [number, number];
      readonly sum: 'above' | 'below';
      readonly limit: number;
    }
);

/**
 * Two wheels, each cut as a wheel, whose teeth leave each other no room where their pitch circles touch. Only changes that
 * were found to free them are named.
 */
export interface FullForms {
  readonly kind: 'fullForms';
  readonly wheels: readonly [WheelId, WheelId];
  /** Where the pitch circles touch, and the nearest distance that is free, mm; absent where none is. */
  readonly calculated: number;
  readonly free?: number;
  /** The member that is to be cut as a pinion. */
  readonly pinion?: WheelId;
  /** An addendum for both, × module. */
  readonly addendum?: number;
}

/** Why a pair has no contact at a distance, or at none. */
export type ContactFault =
  | { readonly kind: 'bothRings' }
  | { readonly kind: 'ringTooFew' }
  /** Not a number, not finite, or not above zero. */
  | { readonly kind: 'noDistance'; readonly distance: number }
  | { readonly kind: 'outOfReach'; readonly distance: number; readonly short: number }
  /** At some places of the pitch no teeth touch. */
  | { readonly kind: 'loseEachOther'; readonly distance: number }
  /** At no distance near the calculated one do the teeth both keep touching and stay free. */
  | { readonly kind: 'neverMesh'; readonly calculated: number };

/** Any reason for a pair without contact: in one wheel, between the two, or at the distance. */
export type PairFault = ToothFault | Mismatch | ContactFault;
