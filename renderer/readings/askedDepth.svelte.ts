/** The depth that a reading was last asked for, from its card; the view of readings begins with it. */
import type { RuleId } from '../../solver/movement/ids.ts';

/** Holds the depth until the view has taken it. */
class AskedDepth {
  private asked = $state<RuleId | undefined>(undefined);

  get rule(): RuleId | undefined {
    return this.asked;
  }

  ask(rule: RuleId | undefined): void {
    this.asked = rule;
  }
}

export const askedDepth = new AskedDepth();
