/** Distances on the bench. */
import type { RuleKindOnBench } from './kind.ts';

/** Offered between any two. */
export const distanceOnBench: RuleKindOnBench = {
  between: ({ points }) => [{ kind: 'distance', points, length: 1 }],
};
