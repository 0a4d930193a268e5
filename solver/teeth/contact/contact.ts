/** What `contactOfPair` gives: how a pair runs at a distance. Angles in radians, lengths in mm. */
import type { PairFault } from '../pairFaults.ts';
import type { Touch } from './driveOfTooth.ts';

/** How a pair runs over one pitch, a value a step. Angles in radians, lengths in mm. */
export interface ContactCurves {
  /** Driver's angle over one pitch, from a tooth on the line of centres. */
  readonly driverAngle: Float64Array;
  /** Driven angle ahead of (+) or behind (−) the even ratio, with the driver pushing. */
  readonly error: Float64Array;
  /** Free angle of the driven wheel while the driver is held. */
  readonly play: Float64Array;
  /** Pairs of teeth that touch at once. */
  readonly pairs: Uint8Array;
  /** Angle between the common normal and the common tangent of the pitch circles. */
  readonly pressureAngle: Float64Array;
  /** The touching point of the leading pair: along the line of centres from the driver's axis, and across it. */
  readonly pointX: Float64Array;
  readonly pointY: Float64Array;
}

/** A pair in mesh at a distance, summed up over one pitch. */
export interface PairContact {
  readonly kind: 'contact';
  readonly distance: number;
  readonly internal: boolean;
  /** Free angle of the driven wheel over the pitch, driver held: least, greatest, mean. Negative: it binds. */
  readonly play: { readonly least: number; readonly greatest: number; readonly mean: number };
  /** The same along the driven wheel's operating pitch circle, mm. */
  readonly backlash: { readonly least: number; readonly greatest: number; readonly mean: number };
  /** Transmission error, peak to peak: radians of the driven wheel, and mm along its operating pitch circle. */
  readonly error: { readonly angle: number; readonly along: number };
  /** Length of a pair's contact in pitches: the mean number of pairs in contact. */
  readonly pairsInContact: number;
  readonly pairs: { readonly least: number; readonly most: number };
  /** Driver's turn between the line of centres and the start (before: negative) and end of a pair's contact. */
  readonly start: number;
  readonly end: number;
  /** The same in pitches: contact before the line of centres (engaging) and after it (disengaging), of one pitch's work. */
  readonly approach: number;
  readonly recess: number;
  /** Share of the pitch during which the leading pair touches before the line of centres, 0 … 1. */
  readonly engaging: number;
  /** Share of the pitch that rests on a tip's corner, 0 … 1. */
  readonly onCorners: number;
  readonly pressureAngle: { readonly least: number; readonly greatest: number };
  /** Tip of the driver to root of the driven and the other way, mm; negative: bottoms. */
  readonly tipClearance: { readonly driver: number; readonly driven: number };
  readonly binds: boolean;
  readonly bottoms: boolean;
  /** Jump of the driven wheel where a tooth lets go before the next has taken up (drop) or strikes tip on tip (butting), radians. */
  readonly drop: number;
  readonly butting: number;
  /** What touches at the start and at the end of a pair's contact. */
  readonly touches: { readonly start: Touch; readonly end: Touch };
  readonly curves: ContactCurves;
}

/** No contact at all, and why. */
export interface NoContact {
  readonly kind: 'none';
  readonly why: PairFault;
}

/** How finely the contact of a pair is looked at. */
export interface ContactOptions {
  /** Steps over one pitch of the driver; 48 when absent. */
  readonly steps?: number;
}
