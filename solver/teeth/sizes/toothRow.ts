/** One row of tooth proportions, × module: what every form's size and outline are made from. */

import type { ToothDoubt } from '../toothFaults.ts';

/** The curve of a tooth above the pitch circle. */
export type ToothFace =
  /** A single arc of this radius (× module) that leaves the flank without a corner: the ogive of a leaf. */
  | { readonly kind: 'ogive'; readonly radius: number }
  /**
   * A single arc of this radius through the flank's point on the pitch circle and a point on the tooth's centre line,
   * `apex` above the pitch circle (× module). Tables give the radius only; this way of placing it is our own.
   */
  | { readonly kind: 'arc'; readonly radius: number; readonly apex: number }
  /** The exact epicycloid for a mate of this many leaves. */
  | { readonly kind: 'epicycloid'; readonly leaves: number }
  /** The envelope of a round pin: pins on the mate's pitch circle, pin radius × module. */
  | { readonly kind: 'pinEnvelope'; readonly pins: number; readonly pinRadius: number };

/** The proportions of one tooth, × module, and where they come from. */
export interface ToothRow {
  readonly role: 'wheel' | 'leaf';
  readonly addendum: number;
  readonly dedendum: number;
  readonly thickness: number;
  readonly face: ToothFace;
  /** Name of the table for the sheet. */
  readonly source: string;
  readonly doubts: readonly ToothDoubt[];
}
