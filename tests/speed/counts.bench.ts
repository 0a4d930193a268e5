/**
 * Speed of the search for counts, each beside a plain nested search in the same run where that ends.
 *
 * Goals (issue 5, warm, ten best): 10..120 teeth, two stages 1 ms, three 5 ms; 12..100 teeth, four stages 60 ms and
 * 200 MB, five 2 s; four stages with equal sums, no prime above 31 and co-prime pairs 1 s.
 */
import type { CountsOptions } from '../../solver/train/counts/counts.ts';
import { largestPrimeOf } from '../../solver/train/counts/limits.ts';
import { findCounts } from '../../solver/train/counts/searchCounts.ts';
import { HEADING, line, time } from './measure.ts';

/** Mean synodic month in days: a target without a short fraction. */
const TARGET = 29.530588853;

const options = (stages: number, from: number, to: number, more: Partial<CountsOptions> = {}): CountsOptions => ({
  ratio: String(TARGET),
  stages,
  drivers: { from, to },
  driven: { from, to },
  best: 10,
  ...more,
});

/** Errors of the ten best ratios, without sign, rising. */
function errorsOf(wanted: CountsOptions): readonly number[] {
  const result = findCounts(wanted);
  if (result.kind !== 'found') throw new Error(`no result for ${JSON.stringify(wanted)}`);
  return result.rows.map((row) => Math.abs(row.errorPpm));
}

/** Nested loops over every multiset of drivers and of driven wheels: the ten least errors of distinct ratios. */
function nestedSearch(
  stages: number,
  from: number,
  to: number,
  passes?: (driver: number[], driven: number[]) => boolean,
): readonly number[] {
  const best: { error: number; ratio: number }[] = [];
  const take = (driver: number[], driven: number[], q: number, p: number): void => {
    const error = Math.abs(p / q / TARGET - 1) * 1e6;
    const worst = best[best.length - 1];
    if (best.length === 10 && worst && error >= worst.error) return;
    if (passes && !passes(driver, driven)) return;
    if (best.some((other) => other.ratio === p / q)) return;
    best.push({ error, ratio: p / q });
    best.sort((a, b) => a.error - b.error);
    best.length = Math.min(best.length, 10);
  };
  const driver: number[] = [];
  const driven: number[] = [];
  const loopDriven = (least: number, q: number, p: number): void => {
    if (driven.length === stages) {
      take(driver, driven, q, p);
      return;
    }
    for (let count = least; count <= to; count++) {
      driven.push(count);
      // Pairs matter where something is asked of them, so then the driven wheels are not taken in order.
      loopDriven(passes ? from : count, q, p * count);
      driven.pop();
    }
  };
  const loopDrivers = (least: number, q: number): void => {
    if (driver.length === stages) {
      loopDriven(from, q, 1);
      return;
    }
    for (let count = least; count <= to; count++) {
      driver.push(count);
      loopDrivers(count, q * count);
      driver.pop();
    }
  };
  loopDrivers(from, 1);
  return best.map((entry) => entry.error);
}

/** Times our search and prints it beside its goal, by the median. */
function searched(name: string, repeats: number, wanted: CountsOptions, goalMs?: number): number {
  const timing = time(() => errorsOf(wanted), repeats, Math.min(repeats, 10));
  const goal = goalMs === undefined ? '' : `goal ${goalMs} ${timing.medianMs <= goalMs ? 'met' : 'MISSED'}`;
  console.log(line(name, timing, goal));
  return timing.medianMs;
}

/** Runs the nested loops once, checks the search against them, and prints how much faster it is. */
function beside(name: string, ours: CountsOptions, oursMs: number, nested: () => readonly number[]): void {
  const start = performance.now();
  const errors = nested();
  const elapsedMs = performance.now() - start;
  mustAgree(name, errorsOf(ours), errors);
  console.log(
    `  nested loops, the same ten: ${elapsedMs.toFixed(0)} ms, once; the search is ${(elapsedMs / oursMs).toFixed(0)} times as fast`,
  );
}

function mustAgree(name: string, ours: readonly number[], theirs: readonly number[]): void {
  const same =
    ours.length === theirs.length &&
    ours.every((error, index) => Math.abs(error - (theirs[index] ?? Number.NaN)) <= 1e-6 * (1e-6 + error));
  if (!same) throw new Error(`${name}: the search found ${ours.join(' ')}, the nested one ${theirs.join(' ')}`);
}

const gcd = (a: number, b: number): number => (b === 0 ? a : gcd(b, a % b));

/** Filters of the last goal, as the nested loops see them. */
function passesFilters(driver: number[], driven: number[]): boolean {
  const sum = (driver[0] ?? 0) + (driven[0] ?? 0);
  return driver.every((count, index) => {
    const mate = driven[index] ?? 0;
    return count + mate === sum && gcd(count, mate) === 1 && largestPrimeOf(count) <= 31 && largestPrimeOf(mate) <= 31;
  });
}

/** Prints the whole report; throws when an answer is wrong. */
export function run(): void {
  console.log(HEADING);
  const two = options(2, 10, 120);
  beside('two stages', two, searched('two stages, 10 to 120 teeth', 200, two, 1), () => nestedSearch(2, 10, 120));
  searched('three stages, 10 to 120 teeth', 60, options(3, 10, 120), 5);
  const three = options(3, 12, 44);
  beside('three stages', three, searched('three stages, 12 to 44 teeth', 60, three), () => nestedSearch(3, 12, 44));
  searched('four stages, 12 to 100 teeth', 20, options(4, 12, 100), 60);
  // Kilobytes; the most that the whole process has held so far, compiler and all.
  console.log(
    `  the whole process so far: at most ${(process.resourceUsage().maxRSS / 1024).toFixed(0)} MB (goal 200)`,
  );
  searched('five stages, 12 to 100 teeth', 10, options(5, 12, 100), 2000);

  const filters: Partial<CountsOptions> = { equalSums: 'all', largestPrime: 31, coprime: true };
  console.log('with filters: equal sums, no prime above 31, co-prime pairs');
  searched('four stages, 12 to 100 teeth, one sum', 20, options(4, 12, 100, filters), 1000);
  const inTwos = {
    ...filters,
    equalSums: [
      [0, 1],
      [2, 3],
    ],
  };
  searched('four stages, 12 to 100 teeth, sums in twos', 20, options(4, 12, 100, inTwos), 1000);
  const few = options(2, 6, 80, filters);
  beside('filters', few, searched('two stages, 6 to 80 teeth, one sum', 60, few), () =>
    nestedSearch(2, 6, 80, passesFilters),
  );
}
