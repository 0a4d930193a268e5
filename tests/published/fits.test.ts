/**
 * Limits and fits against ISO 286-1/-2 (SOURCES.md). The table below holds, for each
 * range, H7, H8, g6, h6, k6, p6 (upper / lower, µm), then the clearances of H7 with g6, h6, k6, p6 derived from it.
 */
import { describe, expect, it } from 'vitest';
import {
  boreBeforePressing,
  FIT_USES,
  type FitUse,
  feelOf,
  fitOf,
  newReamer,
  reamedHole,
  warmingToSlip,
} from '../../solver/made/fits/index.ts';

type Pair = readonly [number, number];
type Row = readonly [number, number, Pair, Pair, Pair, Pair, Pair, Pair, Pair, Pair, Pair, Pair];

const TABLE: readonly Row[] = [
  [3, 6, [12, 0], [18, 0], [-4, -12], [0, -8], [9, 1], [20, 12], [4, 24], [0, 20], [-9, 11], [-20, 0]],
  [6, 10, [15, 0], [22, 0], [-5, -14], [0, -9], [10, 1], [24, 15], [5, 29], [0, 24], [-10, 14], [-24, 0]],
  [10, 18, [18, 0], [27, 0], [-6, -17], [0, -11], [12, 1], [29, 18], [6, 35], [0, 29], [-12, 17], [-29, 0]],
  [18, 30, [21, 0], [33, 0], [-7, -20], [0, -13], [15, 2], [35, 22], [7, 41], [0, 34], [-15, 19], [-35, -1]],
  [30, 50, [25, 0], [39, 0], [-9, -25], [0, -16], [18, 2], [42, 26], [9, 50], [0, 41], [-18, 23], [-42, -1]],
  [50, 80, [30, 0], [46, 0], [-10, -29], [0, -19], [21, 2], [51, 32], [10, 59], [0, 49], [-21, 28], [-51, -2]],
  [80, 120, [35, 0], [54, 0], [-12, -34], [0, -22], [25, 3], [59, 37], [12, 69], [0, 57], [-25, 32], [-59, -2]],
  [120, 180, [40, 0], [63, 0], [-14, -39], [0, -25], [28, 3], [68, 43], [14, 79], [0, 65], [-28, 37], [-68, -3]],
];

const um = (mm: readonly number[], from: number) => mm.map((value) => Math.round((value - from) * 1e6) / 1e3);

describe('ISO 286 as data', () => {
  it.each(TABLE.map((row) => ({ over: row[0], to: row[1], row })))('over $over up to $to mm', ({ over, to, row }) => {
    const [, , H7, H8, g6, h6, k6, p6, Hg, Hh, Hk, Hp] = row;
    const shafts = { g6, h6, k6, p6 } as const;
    const clearances = { g6: Hg, h6: Hh, k6: Hk, p6: Hp } as const;
    for (const size of [over + 0.001, (over + to) / 2, to]) {
      for (const shaft of ['g6', 'h6', 'k6', 'p6'] as const) {
        const fit = fitOf(size, 'H7', shaft);
        if (fit.kind !== 'fit') throw new Error(fit.kind);
        expect(um(fit.limits.hole, size)).toEqual([H7[1], H7[0]]);
        expect(um(fit.limits.shaft, size)).toEqual([shafts[shaft][1], shafts[shaft][0]]);
        expect(um(fit.limits.clearance, 0)).toEqual([...clearances[shaft]]);
      }
      const wide = fitOf(size, 'H8', 'h6');
      expect(wide.kind === 'fit' && um(wide.limits.hole, size)).toEqual([H8[1], H8[0]]);
    }
  });

  // ISO 286-2 for sizes up to and including 3 mm, from memory.
  it('up to 3 mm: the pivots of small work', () => {
    const shafts = { f7: [-16, -6], g6: [-8, -2], h6: [-6, 0], k6: [0, 6], p6: [6, 12] } as const;
    for (const size of [0.3, 1.5, 3]) {
      for (const shaft of ['f7', 'g6', 'h6', 'k6', 'p6'] as const) {
        const fit = fitOf(size, 'H7', shaft);
        if (fit.kind !== 'fit') throw new Error(fit.kind);
        expect(um(fit.limits.hole, size)).toEqual([0, 10]);
        expect(um(fit.limits.shaft, size)).toEqual([...shafts[shaft]]);
      }
      const wide = fitOf(size, 'H8', 'h6');
      expect(wide.kind === 'fit' && um(wide.limits.hole, size)).toEqual([0, 14]);
    }
  });

  // ISO 286-1 (from memory): fundamental deviation of f is 5.5 D^0.41 µm, D the geometric mean of the range; the tolerance
  // is that of H7 beside it. Below 3 mm the published table departs from the formula.
  it.each(TABLE.map(([over, to, H7]) => ({ over, to, width: H7[0] })))('f7 over $over up to $to mm', (range) => {
    const fit = fitOf(range.to, 'H7', 'f7');
    if (fit.kind !== 'fit') throw new Error(fit.kind);
    const upper = -Math.round(5.5 * Math.sqrt(range.over * range.to) ** 0.41);
    expect(um(fit.limits.shaft, range.to)).toEqual([upper - range.width, upper]);
  });

  it('each use names a fit of its kind: a register never tight, a pressed bush never free, a running arbor always free', () => {
    for (const size of [2, 5, 12, 40]) {
      const clearanceOf = (use: FitUse) => {
        const fit = fitOf(size, FIT_USES[use].hole, FIT_USES[use].shaft);
        return fit.kind === 'fit' ? fit.limits.clearance : [Number.NaN, Number.NaN];
      };
      expect(clearanceOf('register')[0]).toBe(0);
      expect(clearanceOf('pressed')[1]).toBeLessThanOrEqual(0.004);
      expect(clearanceOf('running')[0]).toBeGreaterThan(0);
      expect(clearanceOf('collar')[0]).toBeGreaterThan(0);
    }
  });

  it('a size on the boundary belongs to the smaller range; outside the table there is no answer', () => {
    expect(fitOf(6, 'H7', 'g6')).toMatchObject({ limits: { clearance: [0.004, 0.024] } });
    for (const size of [0, -1, 180.01, Number.NaN]) expect(fitOf(size, 'H7', 'g6').kind).toBe('outsideTable');
  });
});

describe('as made (common practice, some hundredths)', () => {
  it.each([
    [5.0, 5.02, 'press'],
    [5.0, 5.003, 'push'],
    [5.005, 5.0, 'snug'],
    [5.015, 5.0, 'sliding'],
    [5.04, 5.0, 'running'],
    [5.1, 5.0, 'loose'],
  ] as const)('hole %d on shaft %d: %s', (hole, shaft, feel) => expect(feelOf(hole, shaft)).toBe(feel));

  it('a bush is bored larger by what pressing closes: common practice is 0.025 to 0.05 for a press of some hundredths', () => {
    const pressed = boreBeforePressing({ seat: 6, outer: 6.04, bore: 3 });
    expect(pressed).toMatchObject({ kind: 'bore', before: 3.032 });
    expect(boreBeforePressing({ seat: 6.01, outer: 6, bore: 3 }).kind).toBe('loose');
  });
});

describe('reamers', () => {
  // DIN 1420, limits of reamers for H7 holes (µm above the nominal size), from memory of the published table.
  it.each([
    [5, 10, 5],
    [8, 12, 6],
    [14, 15, 8],
    [20, 17, 9],
    [40, 21, 12],
  ])('a new reamer for %d H7 is +%d / +%d', (size, most, least) => {
    expect(um(newReamer(size, 'H7') ?? [], size)).toEqual([least, most]);
  });

  it('a reamer is outside the table where the hole is', () => {
    for (const size of [0, -2, 200, Number.NaN]) {
      expect(newReamer(size, 'H7')).toBeUndefined();
      expect(reamedHole({ size, hole: 'H7', reamer: size, cutsOver: 0 }).kind).toBe('outsideTable');
    }
  });

  // 8 H7 is 8.000 to 8.015 (ISO 286); sums by hand.
  it.each([
    [8.006, 0.005, 'within', 0.011],
    [8.012, 0.005, 'wide', 0.017],
    [7.99, 0.005, 'worn', -0.005],
    [7.995, 0.005, 'within', 0],
  ] as const)('a reamer of %d that cuts %d over leaves a hole %s', (reamer, cutsOver, state, wearLeft) => {
    const found = reamedHole({ size: 8, hole: 'H7', reamer, cutsOver, shaft: 7.99 });
    if (found.kind !== 'hole') throw new Error(found.kind);
    expect(found.state).toBe(state);
    expect(found.wearLeft).toBeCloseTo(wearLeft, 9);
    expect(found.cuts).toBeCloseTo(reamer + cutsOver, 12);
    expect(found.feel).toBe(feelOf(reamer + cutsOver, 7.99));
  });

  it('a new reamer that cuts its own size leaves a hole within its class', () => {
    for (const hole of ['H7', 'H8'] as const) {
      for (let size = 0.5; size <= 180; size += 0.5) {
        for (const reamer of newReamer(size, hole) ?? []) {
          expect(reamedHole({ size, hole, reamer, cutsOver: 0 })).toMatchObject({ state: 'within' });
        }
      }
    }
  });

  it('warming opens a brass seat by 19 µm a metre and degree: 0.02 and the play for slipping on Ø 10 want 158 °C', () => {
    expect(warmingToSlip(10, 0.02)?.degrees).toBeCloseTo(0.03 / (19e-6 * 10), 9);
    expect(warmingToSlip(10, 0.02)?.isTooWarm).toBe(false);
    expect(warmingToSlip(4, 0.03)?.isTooWarm).toBe(true);
    expect(warmingToSlip(10, 0)).toBeUndefined();
  });
});
