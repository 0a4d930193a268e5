/**
 * Rules that hold and are not needed: ties that repeat others, and rules that only check. Each may be left out alone
 * without loosening anything, because none of them places. Array kernel: indices come from the plan, hence the `!`.
 */
import { HOLDS } from '../../tolerances.ts';
import type { Placing } from './placing.ts';

/** Spare rules in rising order. */
export function spareRules({ ground, checks }: Placing, missBy: Float64Array): number[] {
  const found: number[] = [...ground.reduction.spare];
  for (let r = 0; r < checks.length; r++) if (checks[r] && missBy[r]! <= HOLDS) found.push(r);
  return found.sort((a, b) => a - b);
}
