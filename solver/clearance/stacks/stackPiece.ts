/** Lengths of a stack between its plates, and what they may be off. */
import type { PartId } from '../../movement/ids.ts';

/** One length of the stack, mm. */
export interface StackPiece {
  /** The wheel that it belongs to; the arbor itself for collars and bare lengths. */
  readonly part: PartId;
  readonly kind: 'wheel' | 'hub' | 'collar' | 'bare';
  readonly from: number;
  readonly to: number;
}

/** What the pieces of a stack may be off. */
export interface StackTolerance {
  /** ± of each piece's length and of the distance of the plates, mm. */
  readonly piece: number;
  readonly plates: number;
}
