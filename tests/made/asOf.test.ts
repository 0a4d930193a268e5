/** The movement as it stood on a day, and the limits of cures. Readings invented here; means worked out by hand. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { boreBeforePressing } from '../../solver/made/fits/index.ts';
import { daysOf, depthReadings, editOfSize, movementAsOf, offPlaces, sizeReadings } from '../../solver/made/index.ts';
import { editsOfDepthReadings } from '../../solver/made/readings/depthReadings.ts';
import { applyEdit, type Edit } from '../../solver/movement/index.ts';
import type { Movement } from '../../solver/movement/schema.ts';
import { plantMovement } from '../../solver/planting/index.ts';
import { movementOf } from '../marking/placedByHand.ts';

/** Two depths by hand (SOURCES.md), with readings on three days and a wheel's tips on the second. */
function worked(extra: object = {}): Movement {
  const wheel = (id: string, arbor: string, teeth: number, level: number) => ({
    id,
    arbor,
    teeth,
    size: { module: 0.8 },
    form: 'cycloidal',
    level,
    thickness: 2,
  });
  const depth = (id: string, value: number, date: string) => ({
    id,
    kind: 'depth',
    of: ['w1', 'p1'],
    value,
    plusMinus: 0.02,
    date,
  });
  return movementOf({
    title: 'Worked example by days',
    arbors: [
      { id: 'centre', at: [0, 0] },
      { id: 'escape', at: [0, 45] },
      { id: 'third', at: [17, 23] },
    ],
    wheels: [
      wheel('w1', 'centre', 64, 0),
      wheel('p1', 'third', 8, 0),
      wheel('w2', 'third', 60, 5),
      wheel('p2', 'escape', 8, 5),
    ],
    rules: [
      { id: 'h1', kind: 'held', point: 'centre', at: [0, 0] },
      { id: 'h2', kind: 'held', point: 'escape', at: [0, 45] },
      { id: 'd1', kind: 'depth', wheels: ['w1', 'p1'] },
      { id: 'd2', kind: 'depth', wheels: ['w2', 'p2'] },
    ],
    readings: [
      depth('r1', 28.82, '2026-05-01'),
      depth('r2', 28.86, '2026-05-03'),
      depth('r3', 28.84, '2026-05-05'),
      { id: 'r4', kind: 'diameter', of: ['w2'], value: 50.3, plusMinus: 0.02, date: '2026-05-03' },
      { id: 'r5', kind: 'diameter', of: ['w2'], value: 50.34, plusMinus: 0.02, date: '2026-05-05' },
    ],
    ...extra,
  });
}

function edited(movement: Movement, ...edits: readonly Edit[]): Movement {
  const outcome = applyEdit(movement, { kind: 'several', edits });
  if (outcome.kind === 'refused') throw new Error(JSON.stringify(outcome.why));
  return outcome.movement;
}

/** Everything that was measured in use. */
function allUsed(movement: Movement): Movement {
  const sizes = sizeReadings(movement).flatMap(({ size, measured }) => {
    const edit = editOfSize(movement, size, measured?.length);
    return edit ? [edit] : [];
  });
  return edited(movement, ...editsOfDepthReadings(movement), ...sizes);
}

function depthOf({ rules }: Movement) {
  const rule = rules.find(({ id }) => id === 'd1');
  return rule?.kind === 'depth' && rule.use === 'measured' ? rule.measured?.value : undefined;
}
const tipOf = ({ wheels }: Movement) => wheels.find(({ id }) => id === 'w2')?.tipDiameter;

describe('as of a day', () => {
  const now = allUsed(worked());

  it.each([
    ['2026-04-30', undefined, undefined],
    ['2026-05-01', 28.82, undefined],
    ['2026-05-02', 28.82, undefined],
    // (28.82 + 28.86) / 2
    ['2026-05-03', 28.84, 50.3],
    ['2026-05-05', 28.84, 50.32],
    ['2027-01-01', 28.84, 50.32],
  ])('at the end of %s the depth is %s and the tips %s', (day, depth, tip) => {
    const then = movementAsOf(now, day);
    if (depth === undefined) expect(depthOf(then)).toBeUndefined();
    else expect(depthOf(then)).toBeCloseTo(depth, 9);
    if (tip === undefined) expect(tipOf(then)).toBeUndefined();
    else expect(tipOf(then)).toBeCloseTo(tip, 6);
  });

  it('as drawn there is nothing measured or made; a depth held stays', () => {
    const held = edited(now, { kind: 'setValue', rule: 'd2', value: 27.3 });
    const drawn = movementAsOf(held, 'drawn');
    expect(drawn.readings).toEqual([]);
    expect(drawn.wheels).toEqual(worked().wheels);
    expect(drawn.rules[2]).toMatchObject({ use: 'calculated' });
    expect(drawn.rules[3]).toMatchObject({ use: 'held', held: 27.3 });
    // Two depths by hand (SOURCES.md): calculated depths.
    const third = [...plantMovement(movementAsOf(now, 'drawn')).places.values()].find(({ id }) => id === 'third');
    expect(third?.x).toBeCloseTo(16.6553, 4);
    expect(third?.y).toBeCloseTo(23.49556, 5);
  });

  it('a depth typed in without a reading has no day, and is there on all', () => {
    const typed = edited(worked(), { kind: 'setMeasured', rule: 'd1', value: 28.9 });
    expect(depthOf(movementAsOf(typed, '2026-04-01'))).toBe(28.9);
    expect(depthOf(movementAsOf(typed, 'drawn'))).toBeUndefined();
  });

  it('a hole drilled twice stands where it was drilled on the day', () => {
    const point = 'third';
    const drilled = (x: number, date: string): Edit => ({
      kind: 'setMade',
      made: { point, state: 'drilled', at: [x, 23.5], date },
    });
    const made = edited(worked(), drilled(16.5, '2026-05-02'), drilled(16.7, '2026-05-06'));
    expect(daysOf(made)).toEqual(['2026-05-01', '2026-05-02', '2026-05-03', '2026-05-05', '2026-05-06']);
    expect(movementAsOf(made, '2026-05-01').made).toEqual([]);
    expect(movementAsOf(made, '2026-05-02').made).toEqual([
      { point, state: 'drilled', at: [16.5, 23.5], date: '2026-05-02' },
    ]);
    expect(movementAsOf(made, '2026-05-06').made).toEqual(made.made);
  });

  it('twice is once, and the last day is now', () => {
    const days = fc.constantFrom('2026-04-01', '2026-05-01', '2026-05-02', '2026-05-03', '2026-05-04', '2026-05-09');
    fc.assert(
      fc.property(days, days, (a, b) => {
        const then = movementAsOf(now, a);
        expect(movementAsOf(then, a)).toEqual(then);
        const [early] = [a, b].sort();
        const both = movementAsOf(then, b);
        expect(depthOf(both) ?? 0).toBeCloseTo(depthOf(movementAsOf(now, early ?? a)) ?? 0, 9);
      }),
      { numRuns: 40 },
    );
    expect(plantMovement(movementAsOf(now, '2027-01-01')).places).toEqual(plantMovement(now).places);
  });
});

describe('a figure that stands', () => {
  const odd = (stands?: object) =>
    worked({
      readings: [28.8, 28.81, 28.79, 29.3].map((value, index) => ({
        id: `r${index}`,
        kind: 'depth',
        of: ['w1', 'p1'],
        value,
        plusMinus: 0.02,
        ...(index === 3 && stands ? { stands } : {}),
      })),
    });

  it('does not belong until the maker says that it is right; then it counts with the rest', () => {
    const [doubted] = depthReadings(odd());
    expect(doubted?.measured?.outliers.map(({ id }) => id)).toEqual(['r3']);
    const [right] = depthReadings(odd({ by: 'A. Maker', date: '2026-05-05' }));
    expect(right?.measured?.outliers).toEqual([]);
    expect(right?.measured?.length).toBeCloseTo((28.8 + 28.81 + 28.79 + 29.3) / 4, 9);
  });
});

describe('limits of cures', () => {
  /** Three marks in a row on a plate; the middle one is drilled off by 0.3 to the right. */
  const off = (cures: object, near = 10) => {
    const at = { a: [-near, 0], b: [0, 0], c: [30, 0] };
    const found = offPlaces(
      movementOf({
        title: 'Three holes',
        plates: [{ id: 'base', outline: { kind: 'circle', centre: [0, 0], radius: 50 }, levels: { from: -2, to: 0 } }],
        marks: Object.entries(at).map(([id, place]) => ({ id, at: place, hole: 3 })),
        rules: Object.entries(at).map(([id, place]) => ({ id: `h-${id}`, kind: 'held', point: id, at: place })),
        made: [{ point: 'b', state: 'drilled', at: [0.3, 0] }],
        cures,
      }),
    );
    return found[0];
  };

  it('a hole is bushed, or plugged beyond the limit, or left within it', () => {
    expect(off({})?.cures.map(({ kind }) => kind)).toEqual(['ream', 'bush', 'plug']);
    expect(off({ plugBeyond: 0.2 })?.cures[0]?.kind).toBe('plug');
    expect(off({ leaveWithin: 0.4 })?.cures.map(({ kind }) => kind)).toEqual(['leave']);
  });

  it('there is as much room as the neighbours and the stated limit leave', () => {
    // From 0.3 to the neighbour's edge at −10 + 1.5: 8.8; less 0.8 of wall: 8, and twice that.
    expect(off({})?.room).toBeCloseTo(16, 9);
    expect(off({ leastWall: 2 })?.room).toBeCloseTo(13.6, 9);
    expect(off({ widestHole: 4 })?.room).toBe(4);
    // Ø 3.6 after drawing over fits in 4; a bush of 3 + 2 (0.8 + 0.3) does not.
    expect(off({ widestHole: 4 })?.cures.map(({ kind }) => kind)).toEqual(['ream', 'plug']);
    const tight = off({}, 3.5);
    // 3.8 − 1.5 − 0.8 = 1.5, twice: Ø 3.
    expect(tight?.room).toBeCloseTo(3, 9);
    expect(tight?.cures.map(({ kind }) => kind)).toEqual(['plug']);
    expect(tight?.cures[0]).toMatchObject({ kind: 'plug', onlyRoom: expect.closeTo(3, 9) });
  });

  it('the share that a pressed bush closes is a setting', () => {
    expect(boreBeforePressing({ seat: 6, outer: 6.05, bore: 3, closing: 0.6 })).toMatchObject({ before: 3.03 });
  });
});
