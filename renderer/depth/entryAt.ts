/** What the solver reports of one depth at a distance, driven either way. */

import type { Movement, RuleOf } from '../../solver/movement/schema.ts';
import { type DepthEntry, depthReport } from '../../solver/teeth/index.ts';

/** How a depth is looked at. */
export interface Look {
  /** mm between the axes; where its own values put it when absent. */
  readonly distance: number | undefined;
  /** The second wheel of the rule drives the first. */
  readonly otherDrives: boolean;
  readonly nameOf: (id: string) => string;
}

/** The report's entry; `undefined` where a wheel of the rule is missing. */
export function entryAt(movement: Movement, rule: RuleOf<'depth'>, look: Look): DepthEntry | undefined {
  const [a, b] = rule.wheels;
  const seen: Movement = {
    ...movement,
    // The report calls wheels by their names; those without one are called as the bench calls them.
    wheels: movement.wheels.map((wheel) =>
      wheel.id === a || wheel.id === b ? { ...wheel, name: look.nameOf(wheel.id) } : wheel,
    ),
    rules: movement.rules.map((each) =>
      each.id === rule.id && each.kind === 'depth' && look.otherDrives ? { ...each, wheels: [b, a] } : each,
    ),
  };
  const report = depthReport(seen, {
    pair: rule.id,
    ...(look.distance === undefined ? {} : { distances: new Map([[rule.id, look.distance]]) }),
  });
  return report.kind === 'report' ? report.depths[0] : undefined;
}
