/** Names of what can be taken hold of on an outline of a plate, wall or opening. */

/** A wall that is a ring has two outlines. */
export type Ring = 'outline' | 'inner';
export type HandleKind = 'corner' | 'side' | 'rim' | 'whole';

/** Names one corner, side or rim. */
export interface HandleRef {
  readonly ring: Ring;
  readonly kind: HandleKind;
  /** Which corner, or the corner that a side starts from; 0 for the rest. */
  readonly index: number;
}
