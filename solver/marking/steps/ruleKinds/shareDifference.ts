/** A shared difference on the metal: no length of it leads to the place, so settings are worked out from the place. */
import type { RuleKindOnMetal } from './kind.ts';

/** Struck like a point of a coupled block. */
export const shareDifferenceOnMetal: RuleKindOnMetal<'shareDifference'> = {};
