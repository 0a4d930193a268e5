/** What the solver reports of one depth at a distance, driven either way. */

import type { Movement, RuleOf } from '../../solver/movement/schema.ts';
import { type DepthEntry, depthReport } from '../../solver/teeth/index.ts';

/** How a depth is looked at. */
export interface DepthLook {
  /** mm between the axes; where its own values put it when absent. */
  readonly distance: number | undefined;
  /** The second wheel of the rule drives the first. */
  readonly otherDrives: boolean;
}

/** The report's entry; `undefined` where a wheel of the rule is missing. */
export function entryAt(movement: Movement, rule: RuleOf<'depth'>, look: DepthLook): DepthEntry | undefined {
  const [a, b] = rule.wheels;
  const seen: Movement = {
    ...movement,
    rules: movement.rules.map((each) =>
      each.id === rule.id && each.kind === 'depth' && look.otherDrives ? { ...each, wheels: [b, a] } : each,
    ),
  };
  const [entry] = depthReport(seen, {
    rules: [rule.id],
    ...(look.distance === undefined ? {} : { distances: new Map([[rule.id, look.distance]]) }),
  });
  return entry;
}
