import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { seededNormal } from '../../solver/made/errors/seededNormal.ts';
import { findWrongHoles, fitPlaces } from '../../solver/made/holes/wrongHole.ts';
import { trueLength } from '../../solver/made/index.ts';
import { combineReadings } from '../../solver/made/readings/combine.ts';
import type { ReadingId } from '../../solver/movement/ids.ts';
import type { Reading } from '../../solver/movement/schema.ts';
import { movementOf } from '../marking/placedByHand.ts';

function reading(value: number, taken?: object): Reading {
  const data = {
    marks: [
      { id: 'a', at: [0, 0] },
      { id: 'b', at: [28.8, 0] },
    ],
    readings: [{ id: 'r1', kind: 'distance', of: ['a', 'b'], value, ...(taken ? { taken } : {}) }],
  };
  const [found] = movementOf(data).readings;
  if (!found) throw new Error('one reading was given');
  return found;
}
function lengthOf(value: number, taken?: object) {
  const found = trueLength(reading(value, taken), 28.8);
  return found.kind === 'length' ? found.length : found;
}

describe('from the gauge to the length', () => {
  it('every way of measuring 28.8 gives 28.8', () => {
    expect(lengthOf(28.8)).toBeCloseTo(28.8, 12);
    expect(lengthOf(28.8, { how: 'between' })).toBeCloseTo(28.8, 12);
    // Over runners of 4 and 3: half of both more; inside: half of both less.
    expect(lengthOf(32.3, { how: 'over', pins: [4, 3] })).toBeCloseTo(28.8, 12);
    expect(lengthOf(25.3, { how: 'inside', pins: [4, 3] })).toBeCloseTo(28.8, 12);
    expect(lengthOf(30.05, { how: 'screw', zero: 1.25 })).toBeCloseTo(28.8, 12);
    // Calipers zeroed inside a hole of 4, then over the far sides of holes of 4 and 3: 28.8 + (3 − 4)/2 = 28.3 shown.
    expect(lengthOf(28.3, { how: 'over', pins: [4, 3], zero: -4 })).toBeCloseTo(28.8, 12);
  });

  it('asks about slips of unit and of the decimal point', () => {
    for (const [value, meant] of [
      [28.8 * 25.4, 28.8],
      [28.8 / 25.4, 28.8],
      [288, 28.8],
      [2.88, 28.8],
    ] as const) {
      const found = trueLength(reading(value), 28.8);
      expect(found.kind).toBe('doubt');
      if (found.kind === 'doubt') expect(found.meant).toBeCloseTo(meant, 9);
    }
    expect(trueLength(reading(28.9), 28.8).kind).toBe('length');
    expect(trueLength(reading(31), 28.8).kind).toBe('length');
  });

  it('refuses what cannot be', () => {
    expect(trueLength(reading(-3))).toMatchObject({ kind: 'impossible' });
    expect(trueLength(reading(2, { how: 'over', pins: [4, 3] }))).toMatchObject({
      kind: 'impossible',
      doubt: { kind: 'withinPins', shown: 2, pins: [4, 3], least: 3.5 },
    });
  });
});

describe('several readings', () => {
  const m = (id: string, length: number, plusMinus = 0.02) => ({ id: id as ReadingId, length, plusMinus });

  it('weigh by their ±', () => {
    // Weighted mean by hand: weights 1/0.01² and 1/0.02² (± 0.02, 0.04): (4·10.00 + 10.05)/5 = 10.01.
    const both = combineReadings([m('a', 10, 0.02), m('b', 10.05, 0.04)]);
    expect(both?.length).toBeCloseTo(10.01, 12);
    expect(combineReadings([])).toBeUndefined();
    expect(combineReadings([m('a', 7)])).toMatchObject({ length: 7, plusMinus: 0.02, outliers: [] });
  });

  it('name the one that does not belong, and do not use it', () => {
    const found = combineReadings([m('a', 28.81), m('b', 28.8), m('c', 29.31), m('d', 28.795), m('e', 28.802)]);
    expect(found?.outliers.map(({ id }) => id)).toEqual(['c']);
    expect(found?.length).toBeCloseTo((28.81 + 28.8 + 28.795 + 28.802) / 4, 9);
    expect(found?.outliers[0]?.off).toBeCloseTo(0.508, 2);
  });

  it('keep both of two that disagree, with a wider ±', () => {
    const two = combineReadings([m('a', 28.8), m('b', 29.3)]);
    expect(two?.outliers).toEqual([]);
    expect(two?.plusMinus).toBeGreaterThan(0.3);
  });

  it('do not depend on their order, and never leave their own span', () => {
    fc.assert(
      fc.property(
        fc.array(
          fc.tuple(fc.double({ min: 1, max: 100, noNaN: true }), fc.double({ min: 0.001, max: 1, noNaN: true })),
          { minLength: 1, maxLength: 8 },
        ),
        (list) => {
          const readings = list.map(([length, plusMinus], index) => m(`r${index}`, length, plusMinus));
          const [a, b] = [combineReadings(readings), combineReadings([...readings].reverse())];
          expect(a?.length).toBeCloseTo(b?.length ?? Number.NaN, 9);
          const lengths = readings.map((each) => each.length);
          expect(a?.length).toBeGreaterThanOrEqual(Math.min(...lengths) - 1e-9);
          expect(a?.length).toBeLessThanOrEqual(Math.max(...lengths) + 1e-9);
        },
      ),
    );
  });
});

/** Eight holes, all 28 distances with noise of a stated ±, and one hole moved. */
function measured(seed: number, moved: { id: string; dx: number; dy: number } | undefined, plusMinus: number) {
  const normal = seededNormal(seed);
  const holes = Array.from({ length: 8 }, (_, k) => ({ id: `h${k}`, x: 20 * k + 7 * normal(), y: 15 * normal() }));
  const real = holes.map((hole) =>
    hole.id === moved?.id ? { ...hole, x: hole.x + moved.dx, y: hole.y + moved.dy } : hole,
  );
  const distances = real.flatMap((a, i) =>
    real.slice(i + 1).map((b) => ({
      from: a.id,
      to: b.id,
      length: Math.hypot(a.x - b.x, a.y - b.y) + (plusMinus / 2) * normal(),
      plusMinus,
    })),
  );
  return { holes, real, distances };
}

describe('which hole is wrong', () => {
  it('finds a planted error among eight holes within the noise, fifty times over', () => {
    for (let seed = 1; seed <= 50; seed++) {
      const angle = seed;
      const moved = { id: `h${seed % 8}`, dx: 0.12 * Math.cos(angle), dy: 0.12 * Math.sin(angle) };
      const { holes, distances } = measured(seed, moved, 0.02);
      const report = findWrongHoles(holes, distances);
      const [first] = report.wrong;
      expect(first?.id, `seed ${seed}`).toBe(moved.id);
      const miss = Math.hypot((first?.dx ?? 0) - moved.dx, (first?.dy ?? 0) - moved.dy);
      // Two standard deviations cover the greater axis in 95 of 100; three of them leave no room for luck.
      expect(miss, `seed ${seed}`).toBeLessThan(2 * (first?.plusMinus ?? 0));
    }
  });

  it('accuses nobody when all is well (one in a thousand a hole), and keeps residuals to the noise', () => {
    let accused = 0;
    for (let seed = 1; seed <= 40; seed++) {
      const { holes, distances } = measured(seed, undefined, 0.02);
      const report = findWrongHoles(holes, distances);
      accused += report.wrong.length;
      expect(report.residuals).toHaveLength(28);
      for (const { sigmas } of report.residuals) expect(Math.abs(sigmas)).toBeLessThan(5);
    }
    expect(accused).toBeLessThanOrEqual(3);
  });

  it('finds two wrong holes', () => {
    const { holes, real, distances } = measured(5, { id: 'h2', dx: 0.15, dy: 0.05 }, 0.01);
    const moved = real.map((hole) => (hole.id === 'h6' ? { ...hole, y: hole.y - 0.2 } : hole));
    const again = distances.map(({ from, to, ...rest }) => {
      const [a, b] = [moved, moved].map((list, k) => list.find((hole) => hole.id === (k === 0 ? from : to)));
      return { from, to, ...rest, length: a && b ? Math.hypot(a.x - b.x, a.y - b.y) : 0 };
    });
    expect(
      findWrongHoles(holes, again)
        .wrong.map(({ id }) => id)
        .sort(),
    ).toEqual(['h2', 'h6']);
  });

  it('bad input harms nothing', () => {
    const { holes } = measured(1, undefined, 0.02);
    expect(findWrongHoles(holes, []).wrong).toEqual([]);
    const odd = [
      { from: 'h0', to: 'nobody', length: 3, plusMinus: 0.02 },
      { from: 'h0', to: 'h0', length: 3, plusMinus: 0.02 },
    ];
    expect(findWrongHoles(holes, odd).residuals).toEqual([]);
    expect(findWrongHoles([], [])).toEqual({ wrong: [], places: [], residuals: [] });
  });
});

describe('most probable places', () => {
  it('give the true shape back from exact distances, laid over the plan as nearly as possible', () => {
    const { holes, real, distances } = measured(9, { id: 'h3', dx: 0.3, dy: -0.2 }, 1e-9);
    const places = fitPlaces(holes, distances);
    places.forEach((a, i) => {
      places.slice(i + 1).forEach((b, j) => {
        const other = real[i + 1 + j];
        const own = real[i];
        if (!other || !own) return;
        expect(Math.hypot(a.x - b.x, a.y - b.y)).toBeCloseTo(Math.hypot(own.x - other.x, own.y - other.y), 6);
      });
    });
    // Least displacement: the mean shift is nothing.
    const mean = places.reduce((sum, place, i) => sum + place.x - (holes[i]?.x ?? 0), 0) / places.length;
    expect(mean).toBeCloseTo(0, 6);
  });
});
