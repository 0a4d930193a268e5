import Fraction from 'fraction.js';
import { describe, expect, it } from 'vitest';
import { watchSteps } from '../../solver/steps.ts';
import type { CountsOptions, CountsResult } from '../../solver/train/counts/counts.ts';
import { findCounts, findCountsSteps } from '../../solver/train/counts/searchCounts.ts';

const range = (from: number, to: number): number[] => Array.from({ length: to - from + 1 }, (_, index) => from + index);

function found(options: CountsOptions): Extract<CountsResult, { kind: 'found' }> {
  const result = findCounts(options);
  if (result.kind !== 'found') {
    throw new Error(JSON.stringify(result, (_, value) => (typeof value === 'bigint' ? `${value}` : value)));
  }
  return result;
}

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
    for (const { driver, driven } of listed.rows.flatMap((row) => row.trains.flatMap((train) => train.stages))) {
      for (const count of [driver, driven]) expect(360 % count === 0 || 420 % count === 0).toBe(true);
    }
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
    for (const starts of [1, 2]) {
      for (const wheel of range(30, 40)) {
        for (const driver of range(8, 40)) {
          for (const driven of range(20, 100)) {
            least = Math.min(least, Math.abs((wheel * driven) / (starts * driver) / 365 - 1));
          }
        }
      }
    }
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
    // 60 teeth over 8, twice: 56.25.
    expect(result.kind === 'none' && result.why).toMatchObject({ kind: 'outOfReach', stages: 2, high: 56.25 });
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
    expect(watchSteps(findCountsSteps(large), () => false).kind).toBe('stopped');
    const shares: number[] = [];
    for (const step of findCountsSteps(large)) shares.push(step.done);
    expect(shares.length).toBeGreaterThan(1);
    expect(shares.every((share) => share >= 0 && share <= 1)).toBe(true);
  });
});
