/** A shared place on the metal: it is there with the other. */
import type { RuleKindOnMetal } from './kind.ts';

/** How one of its points is struck. */
export const samePlaceOnMetal: RuleKindOnMetal<'samePlace'> = {};
