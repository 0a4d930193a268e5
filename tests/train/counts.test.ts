import fc from 'fast-check';
import Fraction from 'fraction.js';
import { describe, expect, it } from 'vitest';
import type { CountsOptions, Stage } from '../../solver/train/counts/counts.ts';
import { distinctProducts } from '../../solver/train/counts/products.ts';
import { findCounts } from '../../solver/train/counts/searchCounts.ts';
import { fractionText } from '../../solver/train/turning/rational.ts';

const range = (from: number, to: number): number[] => Array.from({ length: to - from + 1 }, (_, index) => from + index);

/** Nested loops over every train, nothing clever: the oracle. Gives ratios ranked by exact error, with their trains. */
function bruteForce(
  target: Fraction,
  stages: number,
  drivers: readonly number[],
  driven: readonly number[],
  passes: (pairs: readonly Stage[]) => boolean = () => true,
): { ratio: string; error: Fraction; trains: Set<string> }[] {
  const byRatio = new Map<string, { ratio: string; error: Fraction; trains: Set<string> }>();
  const walk = (pairs: Stage[]): void => {
    if (pairs.length === stages) {
      if (!passes(pairs)) return;
      const ratio = pairs.reduce((product, pair) => product.mul(pair.driven).div(pair.driver), new Fraction(1));
      const key = ratio.toFraction();
      const entry = byRatio.get(key) ?? { ratio: key, error: ratio.div(target).sub(1), trains: new Set<string>() };
      byRatio.set(key, entry);
      const side = (of: 'driver' | 'driven'): string =>
        pairs
          .map((pair) => pair[of])
          .sort((a, b) => a - b)
          .join('x');
      entry.trains.add(`${side('driven')} / ${side('driver')}`);
      return;
    }
    for (const driver of drivers) for (const wheel of driven) walk([...pairs, { driver, driven: wheel }]);
  };
  walk([]);
  return [...byRatio.values()]
    .filter((entry) => entry.error.abs().compare(new Fraction(1, 10)) <= 0)
    .sort((a, b) => a.error.abs().compare(b.error.abs()) || new Fraction(a.ratio).compare(new Fraction(b.ratio)));
}

const teeth = fc.integer({ min: 6, max: 30 });
const span = fc.tuple(teeth, fc.integer({ min: 0, max: 8 })).map(([from, more]) => ({ from, to: from + more }));
const target = fc
  .tuple(fc.integer({ min: 1, max: 400 }), fc.integer({ min: 1, max: 100 }))
  .map(([n, d]) => new Fraction(n, d));

/** The same ranking, apart from ratios that stand equally far on either side. */
function agrees(options: CountsOptions, oracle: ReturnType<typeof bruteForce>, best: number): void {
  const result = findCounts({ ...options, best, trainsPerRatio: 10_000, countTrains: true });
  if (oracle.length === 0) {
    expect(result.kind).toBe('none');
    return;
  }
  expect(result.kind).toBe('found');
  if (result.kind !== 'found') return;
  const wanted = oracle.slice(0, best);
  expect(result.rows.map((row) => `${row.error.n < 0n ? -row.error.n : row.error.n}/${row.error.d}`)).toEqual(
    wanted.map((entry) => `${entry.error.abs().n}/${entry.error.abs().d}`),
  );
  expect(new Set(result.rows.map((row) => fractionText(row.ratio))).size).toBe(result.rows.length);
  for (const row of result.rows) {
    const entry = oracle.find((candidate) => candidate.ratio === fractionText(row.ratio));
    const trains = row.trains.map((train) => {
      const side = (of: 'driver' | 'driven'): string =>
        train.stages
          .map((stage) => stage[of])
          .sort((a, b) => a - b)
          .join('x');
      return `${side('driven')} / ${side('driver')}`;
    });
    expect(new Set(trains)).toEqual(entry?.trains);
  }
}

describe('products', () => {
  it('are the sorted distinct products, whole or within limits (property)', () => {
    const set = fc
      .uniqueArray(fc.integer({ min: 1, max: 60 }), { minLength: 1, maxLength: 12 })
      .map((list) => list.sort((a, b) => a - b));
    fc.assert(
      fc.property(
        fc.array(set, { minLength: 1, maxLength: 4 }),
        fc.integer({ min: 1, max: 5000 }),
        fc.integer({ min: 0, max: 90_000 }),
        (sets, low, more) => {
          const all = sets.reduce<number[]>(
            (list, factors) => [...new Set(list.flatMap((value) => factors.map((factor) => value * factor)))],
            [1],
          );
          const sorted = all.sort((a, b) => a - b);
          expect([...distinctProducts(sets)]).toEqual(sorted);
          expect([...distinctProducts(sets, low, low + more)]).toEqual(
            sorted.filter((value) => value >= low && value <= low + more),
          );
        },
      ),
    );
  });

  it('cross the edge of a window of marks without losing or doubling any', () => {
    const sets = [range(280, 300), range(280, 300), range(90, 110)];
    const all = new Set(
      range(280, 300).flatMap((a) => range(280, 300).flatMap((b) => range(90, 110).map((c) => a * b * c))),
    );
    expect([...distinctProducts(sets)]).toEqual([...all].sort((a, b) => a - b));
    expect(Math.max(...all)).toBeGreaterThan(2 ** 23);
  });
});

describe('search against nested loops (properties)', () => {
  it('one and two stages, no other limits: same ratios, same errors, every train once', () => {
    fc.assert(
      fc.property(target, fc.integer({ min: 1, max: 2 }), span, span, (wanted, stages, drivers, driven) => {
        const oracle = bruteForce(wanted, stages, range(drivers.from, drivers.to), range(driven.from, driven.to));
        agrees({ ratio: wanted.toFraction(), stages, drivers, driven }, oracle, 6);
      }),
      { numRuns: 120 },
    );
  });

  it('three stages of few counts', () => {
    const few = fc.tuple(teeth, fc.integer({ min: 0, max: 3 })).map(([from, more]) => ({ from, to: from + more }));
    fc.assert(
      fc.property(target, few, few, (wanted, drivers, driven) => {
        const oracle = bruteForce(wanted, 3, range(drivers.from, drivers.to), range(driven.from, driven.to));
        agrees({ ratio: wanted.toFraction(), stages: 3, drivers, driven }, oracle, 5);
      }),
      { numRuns: 25 },
    );
  });

  it('equal sums, co-prime pairs, centre distances and primes: the same ratios as loops that test every train', () => {
    fc.assert(
      fc.property(
        target,
        span,
        span,
        fc.boolean(),
        fc.boolean(),
        fc.integer({ min: 20, max: 60 }),
        (wanted, drivers, driven, coprime, equal, most) => {
          const gcd = (a: number, b: number): number => (b === 0 ? a : gcd(b, a % b));
          const options: CountsOptions = {
            ratio: wanted.toFraction(),
            stages: 2,
            drivers,
            driven,
            coprime,
            ...(equal ? { equalSums: 'all' as const } : {}),
            centreDistance: { module: 2, to: most },
            largestPrime: 19,
          };
          const prime = (count: number): boolean =>
            range(2, count).every((p) => count % p !== 0 || p <= 19 || range(2, p - 1).some((q) => p % q === 0));
          const oracle = bruteForce(
            wanted,
            2,
            range(drivers.from, drivers.to).filter(prime),
            range(driven.from, driven.to).filter(prime),
            (pairs) =>
              pairs.every(
                (pair) => (!coprime || gcd(pair.driver, pair.driven) === 1) && pair.driver + pair.driven <= most,
              ) &&
              (!equal || new Set(pairs.map((pair) => pair.driver + pair.driven)).size === 1),
          );
          const result = findCounts({ ...options, best: 5 });
          if (result.kind === 'refused') expect(oracle).toEqual([]);
          else if (oracle.length === 0) expect(result.kind).toBe('none');
          else {
            expect(result.kind === 'found' && result.rows.map((row) => Math.abs(row.errorPpm).toPrecision(9))).toEqual(
              oracle.slice(0, 5).map((entry) => (entry.error.abs().valueOf() * 1e6).toPrecision(9)),
            );
          }
        },
      ),
      { numRuns: 60 },
    );
  });
});
