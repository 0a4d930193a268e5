/** Which piece of a part a solid is: its kind and its part, for whoever names it. */
import type { PartId } from '../../movement/ids.ts';

/** One piece of a part, as it was turned, screwed on or fixed to it. */
export interface Piece {
  readonly part: PartId;
  /** `whole`: the part itself; `swept`: the hand, arm, finger or pin of the arbor that stands at `nth` in the document. */
  readonly piece: 'whole' | 'hub' | 'collar' | 'head' | 'bush' | 'swept';
  readonly nth?: number;
}

/** The same without all that a solid knows besides. */
export function pieceOf({ part, piece, nth }: Piece): Piece {
  return nth === undefined ? { part, piece } : { part, piece, nth };
}
