/** The centre distance of a depth: calculated, measured and held side by side, and the one that is used. */

import type { Movement, RuleOf, Wheel } from '../../movement/schema.ts';
import { calculatedDepth } from '../../teeth/index.ts';

/** The distances of a depth, mm. */
export interface DepthLength {
  /** The distance that is planted, mm. */
  readonly length: number;
  /** Its ± (two standard deviations), mm; absent where none is stated. */
  readonly plusMinus?: number;
  /** With the wanted shake (the rule's allowance) added, mm. */
  readonly calculated: number;
  readonly measured?: number;
  readonly held?: number;
}

/** The length of a depth; where the value to use is absent, the calculated one stands in. */
export function depthLength(rule: RuleOf<'depth'>, a: Wheel, b: Wheel, movement: Movement): DepthLength {
  const depth = calculatedDepth(a, b, movement);
  const calculated = depth.distance + rule.allowance;
  const isMeasured = rule.use === 'measured' && rule.measured !== undefined;
  const chosen = isMeasured ? rule.measured?.value : rule.use === 'held' ? rule.held : undefined;
  const plusMinus = isMeasured ? (rule.measured?.plusMinus ?? rule.plusMinus) : rule.plusMinus;
  return {
    length: chosen ?? calculated,
    ...(plusMinus === undefined ? {} : { plusMinus }),
    calculated,
    ...(rule.measured === undefined ? {} : { measured: rule.measured.value }),
    ...(rule.held === undefined ? {} : { held: rule.held }),
  };
}
