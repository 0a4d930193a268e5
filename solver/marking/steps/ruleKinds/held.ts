/** A held place on the metal: distances from the datum. */
import type { RuleKindOnMetal } from './kind.ts';

/** How one of its points is struck. */
export const heldOnMetal: RuleKindOnMetal<'held'> = {
  isByCoordinates: true,
};
