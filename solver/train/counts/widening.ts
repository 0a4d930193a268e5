/** All distinct ratios whose error lies between two bounds, in order of error. */
import type { Steps } from '../../steps.ts';
import { divide, ONE, rational, subtract } from '../turning/rational.ts';
import { CHUNK, type RankedRatio, ROUNDING } from './bestRatios.ts';
import { greatestCommonFactor, type Task } from './limits.ts';
import { lowerBound } from './products.ts';
import type { ProductLists } from './trainsOfRatio.ts';

/**
 * @param low, high errors without sign, as fractions: low < error <= high
 * Yields the share done. The order is that of the double errors: two that differ by less than their rounding may
 * stand either way round, and callers rank again by exact errors.
 */
export function* ratiosWithinSteps(
  task: Task,
  lists: ProductLists,
  low: number,
  high: number,
): Steps<number, readonly RankedRatio[]> {
  // Array kernel: indices stay inside the lists by the loop bounds.
  const { targetNumber: target } = task;
  const { driven, drivers } = lists;
  const found = new Map<string, { driven: number; drivers: number; size: number }>();
  let at = lowerBound(driven, target * (drivers[0] ?? 0) * (1 - high - ROUNDING));
  for (let index = 0; index < drivers.length; index++) {
    const q = drivers[index] as number;
    const wanted = target * q;
    while (at < driven.length && (driven[at] as number) < wanted * (1 - high - ROUNDING)) at++;
    for (let other = at; other < driven.length; other++) {
      const p = driven[other] as number;
      if (p > wanted * (1 + high + ROUNDING)) break;
      const size = Math.abs(p - wanted) / wanted;
      if (size <= low - ROUNDING || size > high) continue;
      const factor = greatestCommonFactor(p, q);
      const key = `${p / factor}/${q / factor}`;
      if (!found.has(key)) found.set(key, { driven: p / factor, drivers: q / factor, size });
    }
    if (index % CHUNK === CHUNK - 1) yield index / drivers.length;
  }
  return [...found.values()]
    .sort((a, b) => a.size - b.size || a.drivers - b.drivers)
    .map((entry) => {
      const ratio = rational(entry.driven, entry.drivers);
      return { ...entry, ratio, error: subtract(divide(ratio, task.target), ONE) };
    });
}
