/** One radius for several points on the bench. */
import type { RuleKindOnBench } from './kind.ts';

/** Three or more about each of them. */
export const sameRadiusOnBench: RuleKindOnBench = {
  aboutMany: (_, centre, others) => ({ kind: 'sameRadius', points: [...others], centre }),
};
