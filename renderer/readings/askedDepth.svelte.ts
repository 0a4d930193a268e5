/** The depth that a reading was last asked for, from its card; the view of readings begins with it. */
import type { RuleId } from '../../solver/movement/ids.ts';

export const askedDepth = $state<{ rule: RuleId | undefined }>({ rule: undefined });
