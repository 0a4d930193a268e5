/** Held places on the bench. */
import type { RuleKindOnBench } from './kind.ts';

/** Offered for a loose point alone, by planting. */
export const heldOnBench: RuleKindOnBench = {};
