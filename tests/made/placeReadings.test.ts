/** Where holes were drilled, read several times. The hole and its readings are invented here; expected values by hand. */
import { describe, expect, test } from 'vitest';
import { drilledFrom, type PlaceTyped } from '../../renderer/readings/drilledPlace.ts';
import { movementAsOf, placeReadings } from '../../solver/made/index.ts';
import type { PointId } from '../../solver/movement/ids.ts';
import { applyEdit } from '../../solver/movement/index.ts';
import type { Movement } from '../../solver/movement/schema.ts';
import { plantMovement } from '../../solver/planting/index.ts';
import { speakerOf } from '../../solver/words/index.ts';
import { doubtSays } from '../../solver/words/shop/index.ts';
import { movementOf } from '../marking/placedByHand.ts';

const POINT = 'b' as PointId; // the second mark below

function holes(readings: readonly object[] = [], made: readonly object[] = []): Movement {
  return movementOf({
    marks: [
      { id: 'a', at: [0, 0], hole: 3 },
      { id: 'b', at: [30, 12], hole: 3 },
    ],
    rules: [
      { id: 'ra', kind: 'held', point: 'a', at: [0, 0] },
      { id: 'rb', kind: 'held', point: 'b', at: [30, 12] },
    ],
    readings: readings.map((each, index) => ({ id: `m${index}`, kind: 'place', of: ['b'], ...each })),
    made,
  });
}
const placesOf = (movement: Movement) => placeReadings(movement, plantMovement(movement).places);
const typed = {
  x: 30.02,
  y: 12.01,
  plusMinus: 0.01,
  gauge: 'Readout',
  note: '',
  date: '2026-05-01',
  isAfresh: false,
};

/** The movement after a typed place was kept. */
function after(movement: Movement, more: Partial<PlaceTyped> = {}): { movement: Movement; says: string } {
  const read = drilledFrom({ ...typed, ...more }, plantMovement(movement), POINT);
  if (read.kind === 'problem') return { movement, says: read.says };
  const outcome = applyEdit(movement, { kind: 'several', edits: read.edits });
  if (outcome.kind === 'refused') throw new Error(JSON.stringify(outcome.why));
  return { movement: outcome.movement, says: read.says };
}

describe('several readings of one hole', () => {
  test('are weighted by their ±, each axis for itself', () => {
    const [found] = placesOf(
      holes([
        { at: [30.02, 12], plusMinus: 0.02 },
        { at: [30.04, 12.02], plusMinus: 0.02 },
        { at: [30.06, 12.01], plusMinus: 0.04 },
      ]),
    );
    // Weights 4, 4, 1: (4·0.02 + 4·0.04 + 0.06) / 9 and (0 + 4·0.02 + 0.01) / 9.
    expect(found?.measured?.at[0]).toBeCloseTo(30 + 0.3 / 9, 12);
    expect(found?.measured?.at[1]).toBeCloseTo(12 + 0.09 / 9, 12);
    expect(found).toMatchObject({ point: 'b', isUsed: false, doubts: [] });
  });

  test('one that is off along one axis counts along neither, and is named with its distance', () => {
    const [found] = placesOf(
      holes([
        { at: [30.01, 12], plusMinus: 0.02 },
        { at: [30, 12.01], plusMinus: 0.02 },
        { at: [29.99, 11.99], plusMinus: 0.02 },
        { at: [30, 12.5], plusMinus: 0.02 },
      ]),
    );
    expect(found?.measured?.at[0]).toBeCloseTo(30, 12);
    expect(found?.measured?.at[1]).toBeCloseTo(12, 12);
    expect(found?.measured?.used).toEqual(['m0', 'm1', 'm2']);
    expect(found?.measured?.outliers).toEqual([{ id: 'm3', off: expect.closeTo(0.5, 9) }]);
  });

  test.each([
    [[762, 304.8], 'millimetres taken as inches'],
    [[300, 120], 'too far right'],
    [[-30, 12], 'the other face'],
    [[12, 30], 'exchanged'],
  ])('a slip is asked about and not used: %j', (at, cause) => {
    const [found] = placesOf(holes([{ at }]));
    expect(found?.measured).toBeUndefined();
    expect(found?.doubts.map((doubt) => doubtSays(doubt, speakerOf(holes([{ at }]))))).toEqual([
      expect.stringMatching(new RegExp(`${cause}.*Did you mean 30\\.000 mm, 12\\.000 mm\\?`)),
    ]);
    expect(placesOf(holes([{ at, stands: { by: 'A. Maker' } }]))[0]?.measured?.at).toEqual(at);
  });

  test('a hole far off that no slip explains is taken as it is', () => {
    expect(placesOf(holes([{ at: [33, 15] }]))[0]).toMatchObject({ doubts: [], measured: { at: [33, 15] } });
  });
});

describe('a place as it is typed', () => {
  test('is kept with its gauge, ± and day, and the hole is drilled where all readings put it', () => {
    const once = after(holes()).movement;
    expect(once.readings).toMatchObject([
      { kind: 'place', of: ['b'], at: [30.02, 12.01], plusMinus: 0.01, gauge: 'Readout' },
    ]);
    expect(once.made).toMatchObject([{ point: 'b', state: 'drilled', at: [30.02, 12.01], date: '2026-05-01' }]);
    const twice = after(once, { x: 30.04, y: 12.03, date: '2026-05-02' }).movement;
    expect(twice.made).toMatchObject([{ at: [30.03, 12.02], date: '2026-05-02', earlier: [{ at: [30.02, 12.01] }] }]);
    expect(placesOf(twice)[0]?.isUsed).toBe(true);
    expect(plantMovement(twice).places.get(POINT)).toMatchObject({ x: 30.03, y: 12.02 });
    // The day before, there was one reading.
    expect(movementAsOf(twice, '2026-05-01').made).toMatchObject([{ at: [30.02, 12.01] }]);
  });

  test('drilled afresh, what was read before no longer counts', () => {
    const twice = after(after(holes()).movement, { x: 30, y: 12, isAfresh: true }).movement;
    expect(twice.readings.map(({ setAside }) => setAside)).toEqual([true, false]);
    expect(twice.made).toMatchObject([{ at: [30, 12] }]);
  });

  test('a doubtful one is kept and drills nothing', () => {
    const { movement, says } = after(holes(), { x: -30, y: 12 });
    expect(says).toContain('asked about');
    expect(movement.readings).toHaveLength(1);
    expect(movement.made).toEqual([]);
  });

  test.each([
    [{ x: undefined }, /^x as drilled: /],
    [{ y: undefined }, /^y as drilled: /],
    [{ plusMinus: -0.1 }, /^±: .*below zero/],
    [{ date: '' }, /^Day: /],
  ])('%j is refused in words', (more, says) => {
    const found = after(holes(), more);
    expect(found.says).toMatch(says);
    expect(found.movement.readings).toEqual([]);
  });
});
