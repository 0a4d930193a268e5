/** Shared differences on the bench. */
import type { RuleKindOnBench } from './kind.ts';

/** Offered on the slip of a point of which more lengths are known than it needs (`offers/shareOffer.ts`); nothing settles on it. */
export const shareDifferenceOnBench: RuleKindOnBench = {};
