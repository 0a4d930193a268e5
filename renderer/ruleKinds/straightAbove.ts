/** Points straight above each other on the bench. */
import type { RuleKindOnBench } from './kind.ts';

/** Offered for any two: the one chosen last follows. */
export const straightAboveOnBench: RuleKindOnBench = {
  beside: ({ points: [of, point] }) => [{ kind: 'straightAbove', point, of }],
};
