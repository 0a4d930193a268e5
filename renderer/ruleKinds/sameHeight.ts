/** Points at one height on the bench. */
import type { RuleKindOnBench } from './kind.ts';

/** Offered for any two: the one chosen last follows. */
export const sameHeightOnBench: RuleKindOnBench = {
  beside: ({ points: [of, point] }) => [{ kind: 'sameHeight', point, of }],
};
