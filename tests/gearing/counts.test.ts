import fc from 'fast-check';
import Fraction from 'fraction.js';
import { describe, expect, it } from 'vitest';
import type { CountsOptions, CountsResult, Stage } from '../../solver/gearing/counts/counts.ts';
import { distinctProducts } from '../../solver/gearing/counts/products.ts';
import { findCounts, searchCounts } from '../../solver/gearing/counts/searchCounts.ts';
import { fractionText } from '../../solver/gearing/turning/rational.ts';

const range = (from: number, to: number): number[] => Array.from({ length: to - from + 1 }, (_, index) => from + index);

const found = (options: CountsOptions): Extract<CountsResult, { kind: 'found' }> => {
  const result = findCounts(options);
  if (result.kind !== 'found')
    throw new Error(JSON.stringify(result, (_, value) => (typeof value === 'bigint' ? `${value}` : value)));
  return result;
};

/** Nested loops over every train, nothing clever: the oracle. Gives ratios ranked by exact error, with their trains. */
const bruteForce = (
  target: Fraction,
  stages: number,
  drivers: readonly number[],
  driven: readonly number[],
  passes: (pairs: readonly Stage[]) => boolean = () => true,
): { ratio: string; error: Fraction; trains: Set<string> }[] => {
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
};

const teeth = fc.integer({ min: 6, max: 30 });
const span = fc.tuple(teeth, fc.integer({ min: 0, max: 8 })).map(([from, more]) => ({ from, to: from + more }));
const target = fc
  .tuple(fc.integer({ min: 1, max: 400 }), fc.integer({ min: 1, max: 100 }))
  .map(([n, d]) => new Fraction(n, d));

/** The same ranking, apart from ratios that stand equally far on either side. */
const agrees = (options: CountsOptions, oracle: ReturnType<typeof bruteForce>, best: number): void => {
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
};

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
          else
            expect(result.kind === 'found' && result.rows.map((row) => Math.abs(row.errorPpm).toPrecision(9))).toEqual(
              oracle.slice(0, 5).map((entry) => (entry.error.abs().valueOf() * 1e6).toPrecision(9)),
            );
        },
      ),
      { numRuns: 60 },
    );
  });
});

describe('the limits of the workshop', () => {
  const base: CountsOptions = {
    ratio: '13.36838',
    stages: 2,
    drivers: { from: 8, to: 40 },
    driven: { from: 20, to: 100 },
  };

  it('keeps every listed train within every limit', () => {
    const rows = found({
      ...base,
      stages: 3,
      coprime: true,
      largestPrime: 23,
      centreDistance: { module: 1, from: 20, to: 50 },
      best: 20,
    }).rows;
    expect(rows).toHaveLength(20);
    for (const train of rows.flatMap((row) => row.trains)) {
      expect(train.largestPrime).toBeLessThanOrEqual(23);
      for (const { driver, driven } of train.stages) {
        expect(new Fraction(driven, driver).toFraction()).toBe(`${driven}/${driver}`);
        expect((driver + driven) / 2).toBeGreaterThanOrEqual(20);
        expect((driver + driven) / 2).toBeLessThanOrEqual(50);
      }
    }
  });

  it('takes centre distances in inch sizes too: 16 DP is module 1.5875', () => {
    const distances = { from: 40, to: 60 };
    const inch = found({ ...base, centreDistance: { diametralPitch: 16, ...distances } });
    const metric = found({ ...base, centreDistance: { module: 1.5875, ...distances } });
    expect(inch.rows).toEqual(metric.rows);
    expect(findCounts({ ...base, centreDistance: { diametralPitch: 0 } }).kind).toBe('refused');
    expect(findCounts({ ...base, centreDistance: { module: 1, from: 9, to: 3 } }).kind).toBe('refused');
  });

  it('uses only counts that the plates divide, as a list or as a question, and finds the same', () => {
    const listed = found({
      ...base,
      divisions: range(8, 100).filter((count) => 360 % count === 0 || 420 % count === 0),
    });
    const asked = found({ ...base, divisions: (count) => 360 % count === 0 || 420 % count === 0 });
    expect(asked.rows.map((row) => row.digits)).toEqual(listed.rows.map((row) => row.digits));
    for (const { driver, driven } of listed.rows.flatMap((row) => row.trains.flatMap((train) => train.stages)))
      for (const count of [driver, driven]) expect(360 % count === 0 || 420 % count === 0).toBe(true);
  });

  it('uses each wheel on hand once only', () => {
    const once = found({ ...base, ratio: 16, onHand: [8, 10, 32, 40, 64, 80] });
    expect(once.rows[0]?.digits).toBe('16');
    expect(once.rows[0]?.trains[0]?.stages).toHaveLength(2);
    // 64/8 twice would also give 64, but there is one of each.
    const none = findCounts({ ...base, ratio: 64, onHand: [8, 64], tolerancePpm: 1 });
    expect(none.kind).toBe('none');
    expect(findCounts({ ...base, ratio: 64, onHand: [8, 8, 64, 64], tolerancePpm: 1 }).kind).toBe('found');
  });

  it('has equal sums within groups of stages', () => {
    const rows = found({
      ...base,
      stages: 4,
      equalSums: [
        [0, 1],
        [2, 3],
      ],
      best: 5,
    }).rows;
    for (const train of rows.flatMap((row) => row.trains)) {
      const sums = train.stages.map((stage) => stage.driver + stage.driven).sort((a, b) => a - b);
      expect([sums[0], sums[2]]).toEqual([sums[1], sums[3]]);
    }
  });

  it('finds the sense by an idler, by another number of stages, or not at all', () => {
    expect(found({ ...base, sense: 'reversed' }).rows[0]?.trains[0]?.idlers).toBe(1);
    expect(found({ ...base, sense: 'same' }).rows[0]?.trains[0]?.idlers).toBe(0);
    const either = found({ ...base, stages: { from: 2, to: 3 }, sense: 'reversed', idlers: false });
    for (const train of either.rows.flatMap((row) => row.trains)) expect(train.stages).toHaveLength(3);
    expect(findCounts({ ...base, sense: 'reversed', idlers: false }).kind).toBe('none');
  });

  it('starts with a worm where asked: starts over the wheel, checked by nested loops', () => {
    const worm = { starts: { from: 1, to: 2 }, wheel: { from: 30, to: 40 } };
    const rows = found({ ...base, ratio: 365, worm, best: 3, tolerancePpm: 1e5 }).rows;
    let least = Number.POSITIVE_INFINITY;
    for (const starts of [1, 2])
      for (const wheel of range(30, 40))
        for (const driver of range(8, 40))
          for (const driven of range(20, 100))
            least = Math.min(least, Math.abs((wheel * driven) / (starts * driver) / 365 - 1));
    expect(Math.abs(rows[0]?.errorPpm ?? Number.NaN)).toBeCloseTo(least * 1e6, 6);
    expect(rows[0]?.trains[0]?.stages[0]?.worm).toBe(true);
  });

  it('merges one to three stages and gives each ratio once', () => {
    const rows = found({ ...base, ratio: 8, stages: { from: 1, to: 3 }, best: 5 }).rows;
    expect(rows[0]?.digits).toBe('8');
    expect(new Set(rows.map((row) => row.digits)).size).toBe(5);
  });
});

describe('bad input and no result, in clear words', () => {
  const base: CountsOptions = { ratio: '12', stages: 2, drivers: { from: 8, to: 20 }, driven: { from: 20, to: 60 } };

  it('refuses all problems at once, naming field, found and expected', () => {
    const result = findCounts({
      ...base,
      ratio: '-3',
      stages: 0,
      drivers: { from: 9.5, to: 3 },
      best: 0,
      tolerancePpm: 0,
    });
    expect(result.kind).toBe('refused');
    const fields = result.kind === 'refused' ? result.problems.map((problem) => problem.field) : [];
    expect(fields).toEqual(
      expect.arrayContaining(['ratio', 'stages.from', 'drivers.from', 'drivers', 'best', 'tolerancePpm']),
    );
  });

  it.each(['0', '0/5', 'month', Number.NaN, Number.POSITIVE_INFINITY, ''])('refuses the ratio %s', (ratio) => {
    const result = findCounts({ ...base, ratio });
    expect(result.kind === 'refused' && result.problems[0]?.field).toBe('ratio');
  });

  it('says how far the limits reach when the target is outside', () => {
    const result = findCounts({ ...base, ratio: 1000 });
    expect(result.kind).toBe('none');
    expect(result.kind === 'none' && result.says).toContain('56.25');
  });

  it('says the nearest when nothing is within the error', () => {
    const result = findCounts({ ...base, ratio: '3.14159265358979', tolerancePpm: 0.001 });
    expect(result.kind === 'none' && result.nearest?.digits.slice(0, 5)).toBe('3.141');
  });

  it('refuses limits that leave no count, and sums that make no sense', () => {
    expect(findCounts({ ...base, onHand: [] }).kind).toBe('refused');
    expect(findCounts({ ...base, equalSums: [[0, 5]] }).kind).toBe('refused');
    expect(findCounts({ ...base, equalSums: [[0, 1], [1]] }).kind).toBe('refused');
  });

  it('can be stopped and reports progress', () => {
    const large: CountsOptions = {
      ratio: '365.2422',
      stages: 4,
      drivers: { from: 12, to: 100 },
      driven: { from: 12, to: 100 },
    };
    expect(findCounts(large, () => false).kind).toBe('stopped');
    const shares: number[] = [];
    for (const step of searchCounts(large)) shares.push(step.done);
    expect(shares.length).toBeGreaterThan(1);
    expect(shares.every((share) => share >= 0 && share <= 1)).toBe(true);
  });
});
