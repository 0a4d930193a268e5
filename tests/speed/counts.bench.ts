/**
 * Speed of the search for counts, each beside a plain nested search in the same run where that ends.
 *
 * Goals (issue 5, warm, ten best): 10..120 teeth, two stages 1 ms, three 5 ms; 12..100 teeth, four stages 60 ms and
 * 200 MB, five 2 s; four stages with equal sums, no prime above 31 and co-prime pairs 1 s.
 */
import { pathToFileURL } from 'node:url';
import type { CountsOptions } from '../../solver/gearing/counts/counts.ts';
import { largestPrimeOf } from '../../solver/gearing/counts/limits.ts';
import { findCounts } from '../../solver/gearing/counts/searchCounts.ts';

interface Measured {
  readonly name: string;
  readonly minimumMs: number;
  readonly medianMs: number;
  readonly repeats: number;
  readonly goalMs?: number;
  readonly note?: string;
}

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
const errorsOf = (wanted: CountsOptions): readonly number[] => {
  const result = findCounts(wanted);
  if (result.kind !== 'found') throw new Error(`no result for ${JSON.stringify(wanted)}`);
  return result.rows.map((row) => Math.abs(row.errorPpm));
};

/** Nested loops over every multiset of drivers and of driven wheels: the ten least errors of distinct ratios. */
const nestedSearch = (
  stages: number,
  from: number,
  to: number,
  passes?: (driver: number[], driven: number[]) => boolean,
): readonly number[] => {
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
    for (let count = least; count <= to; count += 1) {
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
    for (let count = least; count <= to; count += 1) {
      driver.push(count);
      loopDrivers(count, q * count);
      driver.pop();
    }
  };
  loopDrivers(from, 1);
  return best.map((entry) => entry.error);
};

const timed = (name: string, repeats: number, work: () => unknown, more: Partial<Measured> = {}): Measured => {
  // Warm: the first rounds let the compiler settle, and are not counted.
  for (let round = 0; round < Math.min(repeats, 5); round += 1) work();
  const times = Array.from({ length: repeats }, () => {
    const start = performance.now();
    work();
    return performance.now() - start;
  }).sort((a, b) => a - b);
  return { name, minimumMs: times[0] ?? 0, medianMs: times[Math.floor(repeats / 2)] ?? 0, repeats, ...more };
};

const once = <T>(name: string, work: () => T): { readonly result: T; readonly measured: Measured } => {
  const start = performance.now();
  const result = work();
  const elapsedMs = performance.now() - start;
  return { result, measured: { name, minimumMs: elapsedMs, medianMs: elapsedMs, repeats: 1 } };
};

const mustAgree = (name: string, ours: readonly number[], theirs: readonly number[]): void => {
  const same =
    ours.length === theirs.length &&
    ours.every((error, index) => Math.abs(error - (theirs[index] ?? Number.NaN)) <= 1e-6 * (1e-6 + error));
  if (!same) throw new Error(`${name}: the search found ${ours.join(' ')}, the nested one ${theirs.join(' ')}`);
};

const gcd = (a: number, b: number): number => (b === 0 ? a : gcd(b, a % b));

/** Runs everything; throws where an answer is wrong. */
export const runCountsBench = (): readonly Measured[] => {
  const measured: Measured[] = [];
  const filters: Partial<CountsOptions> = { equalSums: 'all', largestPrime: 31, coprime: true };

  const two = once('two stages 10..120, nested loops', () => nestedSearch(2, 10, 120));
  mustAgree('two stages', errorsOf(options(2, 10, 120)), two.result);
  measured.push(
    timed('two stages 10..120, ten best', 200, () => errorsOf(options(2, 10, 120)), { goalMs: 1 }),
    two.measured,
  );

  const three = once('three stages 12..44, nested loops', () => nestedSearch(3, 12, 44));
  mustAgree('three stages', errorsOf(options(3, 12, 44)), three.result);
  measured.push(
    timed('three stages 10..120, ten best', 60, () => errorsOf(options(3, 10, 120)), { goalMs: 5 }),
    timed('three stages 12..44, ten best', 60, () => errorsOf(options(3, 12, 44))),
    three.measured,
  );

  measured.push(timed('four stages 12..100, ten best', 20, () => errorsOf(options(4, 12, 100)), { goalMs: 60 }));
  // Kilobytes; the most that the whole process has held so far, compiler and all.
  const most = process.resourceUsage().maxRSS / 1024;
  measured.push(timed('five stages 12..100, ten best', 10, () => errorsOf(options(5, 12, 100)), { goalMs: 2000 }));

  const passes = (driver: number[], driven: number[]): boolean => {
    const sum = (driver[0] ?? 0) + (driven[0] ?? 0);
    return driver.every((count, index) => {
      const mate = driven[index] ?? 0;
      return (
        count + mate === sum && gcd(count, mate) === 1 && largestPrimeOf(count) <= 31 && largestPrimeOf(mate) <= 31
      );
    });
  };
  const few = once('two stages 6..80 with filters, nested loops', () => nestedSearch(2, 6, 80, passes));
  mustAgree('filters', errorsOf(options(2, 6, 80, filters)), few.result);
  measured.push(
    timed(
      'four stages 12..100, equal sums, primes to 31, co-prime pairs',
      10,
      () => errorsOf(options(4, 12, 100, filters)),
      { goalMs: 1000 },
    ),
    timed('four stages 12..100, sums equal in twos, primes to 31, co-prime pairs', 10, () =>
      errorsOf(
        options(4, 12, 100, {
          ...filters,
          equalSums: [
            [0, 1],
            [2, 3],
          ],
        }),
      ),
    ),
    timed('two stages 6..80 with filters, ten best', 60, () => errorsOf(options(2, 6, 80, filters))),
    few.measured,
  );
  return measured.map((entry) =>
    entry.name.startsWith('four stages 12..100, ten best')
      ? { ...entry, note: `whole process at most ${most.toFixed(0)} MB` }
      : entry,
  );
};

/** One line a measurement. */
export const countsBenchLines = (measured: readonly Measured[]): readonly string[] =>
  measured.map(
    ({ name, minimumMs, medianMs, repeats, goalMs, note }) =>
      `${name.padEnd(72)} ${minimumMs.toFixed(2).padStart(10)} ms least ${medianMs.toFixed(2).padStart(10)} median of ${repeats}${goalMs === undefined ? '' : `, goal ${goalMs}: ${minimumMs <= goalMs ? 'met' : 'missed'}`}${note ? ` (${note})` : ''}`,
  );

if (process.argv[1] !== undefined && import.meta.url === pathToFileURL(process.argv[1]).href)
  console.log(countsBenchLines(runCountsBench()).join('\n'));
