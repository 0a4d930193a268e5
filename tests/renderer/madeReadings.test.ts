/**
 * Readings as typed, the places that distances tell, cures, states by day, and the choices of the sheets. The holes and
 * their errors are invented here; what is expected is worked out by hand beside each.
 */
import { expect, test } from 'vitest';
import { EMPTY, readingFrom, shownFor } from '../../renderer/readings/readingForm.ts';
import { barTroubleSays, readChoice } from '../../renderer/readings/sheetChoice.ts';
import { historyOf } from '../../renderer/readings/states.ts';
import { holesSeen, readErrors, type WayChoice, wayText } from '../../renderer/sheets/otherWays.ts';
import { datumOf, datumsFor } from '../../renderer/steps/datums.ts';
import {
  daysOf,
  distancesTell,
  editsOfWrongHoles,
  movementAsOf,
  offPlaces,
  trueLength,
} from '../../solver/made/index.ts';
import type { PartId } from '../../solver/movement/ids.ts';
import { applyEdit, type Edit } from '../../solver/movement/index.ts';
import type { Movement } from '../../solver/movement/schema.ts';
import { plantMovement } from '../../solver/planting/index.ts';
import { speakerOf } from '../../solver/words/index.ts';
import { movementOfText } from '../support/movements.ts';

/** A square of 40 mm with a middle, all held, on a plate of 60 by 60. */
function square(): Movement {
  const corners = { a: [10, 10], b: [50, 10], c: [50, 50], d: [10, 50], m: [30, 30] } as const;
  const outline = {
    kind: 'path',
    vertices: [
      [0, 0],
      [60, 0],
      [60, 60],
      [0, 60],
    ].map(([x, y]) => ({ x, y })),
  };
  const text = JSON.stringify({
    format: 'depthwright-movement',
    version: 2,
    title: 'Square of holes',
    plates: [{ id: 'base', outline, levels: { from: -2, to: 0 } }],
    marks: Object.entries(corners).map(([id, at]) => ({ id, at, hole: 3 })),
    rules: Object.entries(corners).map(([id, at]) => ({ id: `held-${id}`, kind: 'held', point: id, at })),
  });
  return movementOfText(text);
}

function edited(movement: Movement, ...edits: readonly Edit[]): Movement {
  const outcome = applyEdit(movement, { kind: 'several', edits });
  if (outcome.kind === 'refused') throw new Error(JSON.stringify(outcome.why));
  return outcome.movement;
}

const pair = (a: string, b: string) => [a, b] as unknown as readonly [PartId, PartId]; // ids of the square's own marks

test('a reading over pins with a zero gives the length; answering a doubt brings the figure that gives what was meant', () => {
  const movement = square();
  const typed = { ...EMPTY, value: 43.55, how: 'over', pinA: 3, pinB: 4, zero: 0.05, plusMinus: 0.02 } as const;
  const read = readingFrom(typed, movement, { kind: 'distance', of: pair('a', 'b') }, '2026-05-01');
  if (read.kind === 'problem') throw new Error(read.says);
  const kept = edited(movement, { kind: 'add', to: 'readings', item: read.item });
  const [reading] = kept.readings;
  if (!reading) throw new Error('the reading is gone');
  // 43.55 − 0.05 − (3 + 4) / 2
  expect(trueLength(reading, 40)).toMatchObject({ kind: 'length', plusMinus: 0.02 });
  expect(shownFor(reading, 40, 40)).toBeCloseTo(43.55, 12);
});

test.each([
  ['The gauge shows', EMPTY],
  ['The gauge shows', { ...EMPTY, value: -40 }],
  ['First pin Ø', { ...EMPTY, value: 44, how: 'over' as const }],
  ['Second pin Ø', { ...EMPTY, value: 44, how: 'inside' as const, pinA: 3 }],
])('%s is asked about by name', (name, typed) => {
  const read = readingFrom(typed, square(), { kind: 'distance', of: pair('a', 'b') }, '2026-05-01');
  expect(read).toMatchObject({ kind: 'problem' });
  expect(read.kind === 'problem' && read.says).toContain(`${name}:`);
});

const NOWHERE: readonly [number, number] = [Number.NaN, Number.NaN];

/** Distances from every corner to every other with `c` really standing 0.3 to the right and 0.4 up. */
function measuredWithOneOff(): Movement {
  const movement = square();
  const at = new Map(movement.marks.map(({ id, at: place }) => [id as string, [...place] as [number, number]]));
  at.set('c', [50.3, 50.4]);
  const names = [...at.keys()];
  const edits = names.flatMap((from, i) =>
    names.slice(i + 1).map((to, j): Edit => {
      const [[px, py], [qx, qy]] = [at.get(from) ?? NOWHERE, at.get(to) ?? NOWHERE];
      const value = Math.hypot(px - qx, py - qy);
      const of = [...pair(from, to)];
      return {
        kind: 'add',
        to: 'readings',
        item: { id: `r${i}-${j}`, kind: 'distance', of, value, plusMinus: 0.02 },
      };
    }),
  );
  return edited(movement, ...edits);
}

test('distances between the holes name the one that is off, and it is taken as drilled there', () => {
  const placed = plantMovement(measuredWithOneOff());
  const tells = distancesTell(placed);
  expect(tells.report.wrong.map(({ id }) => id)).toEqual(['c']);
  expect(tells.report.wrong[0]?.dx).toBeCloseTo(0.3, 6);
  expect(tells.report.wrong[0]?.dy).toBeCloseTo(0.4, 6);

  const made = edited(placed.movement, ...editsOfWrongHoles(placed, tells, '2026-05-02'));
  const place = [...plantMovement(made).places.values()].find(({ id }) => id === 'c');
  expect(place?.x).toBeCloseTo(50.3, 6);
  expect(place?.y).toBeCloseTo(50.4, 6);
  // Off by 0.5 mm: the way back is 0.5 along 180° + 53.13°.
  const [off] = offPlaces(made);
  expect(Math.hypot(off?.dx ?? 0, off?.dy ?? 0)).toBeCloseTo(0.5, 6);
  const ream = off?.cures.find(({ kind }) => kind === 'ream');
  // A hole of Ø 3 moved by 0.5 cleans up at Ø 4.
  expect(ream?.kind === 'ream' && ream.diameter).toBeCloseTo(4, 6);
  expect(ream?.kind === 'ream' && (ream.towards.angle * 180) / Math.PI).toBeCloseTo(233.1301 - 360, 3);
});

test('one odd reading among several of one distance accuses no hole; a depthing tool tells nothing of holes', () => {
  const reading = (id: string, value: number, kind: 'distance' | 'depth' = 'distance'): Edit => ({
    kind: 'add',
    to: 'readings',
    item: { id, kind, of: [...pair('a', 'b')], value, plusMinus: 0.02 },
  });
  const several = edited(
    square(),
    reading('r1', 40.003),
    reading('r2', 39.998),
    reading('r3', 40.4),
    reading('r4', 40),
  );
  const tells = distancesTell(plantMovement(several));
  expect(tells.distances).toHaveLength(1);
  // (40.003 + 39.998 + 40) / 3
  expect(tells.distances[0]?.length).toBeCloseTo(40.000_333, 5);
  expect(tells.report.wrong).toEqual([]);
  const depthed = edited(square(), reading('r1', 40.5, 'depth'));
  expect(distancesTell(plantMovement(depthed)).distances).toEqual([]);
});

test('the movement as of a day has what was made by its end; the history tells it', () => {
  const placed = plantMovement(measuredWithOneOff());
  const made = edited(placed.movement, ...editsOfWrongHoles(placed, distancesTell(placed), '2026-05-02'));
  expect(daysOf(made)).toEqual(['2026-05-02']);
  expect(movementAsOf(made, '2026-05-01').made).toEqual([]);
  expect(movementAsOf(made, '2026-05-02').made).toHaveLength(1);
  expect(movementAsOf(made, 'drawn').readings).toEqual([]);
  const [latest] = historyOf(speakerOf(made));
  expect(latest?.says).toMatch(/^mark 3 drilled at 50\.[23]/);
});

test('other ways: a rotary table about the middle reads 45, 135, 225, 315 degrees; odd tables are asked about', () => {
  const placed = plantMovement(square());
  const choice: WayChoice = {
    way: 'rotary',
    plate: 'base',
    face: 'up',
    first: 'm',
    second: undefined,
    ratio: 40,
    zeroDeg: 0,
    clockwise: false,
    finder: 0,
    button: 0,
    errors: [],
  };
  const { text } = wayText(placed, choice);
  // 40:1 is 9° a turn: 45° is five turns, 135° fifteen, 225° twenty-five, 315° thirty-five.
  for (const turns of [5, 15, 25, 35]) expect(text).toContain(`${turns} turns 0° 0′ 0″`);
  expect(wayText(placed, { ...choice, way: 'dividers', second: 'm' }).isList).toBe(false);
  expect(wayText(placed, { ...choice, way: 'readout', first: undefined }).text).not.toMatch(/[XY] -/);
  expect(holesSeen(placed, 'base', 'down').map(({ x }) => x)).toEqual([-10, -50, -50, -10, -30]);
  expect(readErrors('0 0.01\n90 -0.02\n')).toMatchObject({ kind: 'errors' });
  expect(readErrors('ninety 0.01')).toMatchObject({ kind: 'problem' });
  expect(readErrors('400 0.01')).toMatchObject({ kind: 'problem' });
});

test('a datum is what the plate can give', () => {
  const placed = plantMovement(square());
  const datums = datumsFor(placed, 'base', 'up');
  expect(datums.kinds.map(({ kind }) => kind)).toEqual(['edges', 'pair']);
  expect(datumOf(datums, { kind: 'pair', first: 'c', second: 'c' })).toEqual({ kind: 'pair', first: 'c', second: 'a' });
  expect(datumOf(datums, { kind: '', first: '', second: '' })).toBeUndefined();
});

test('printing: what was kept is used where it can be; a bar far off is asked about', () => {
  expect(readChoice(null)).toEqual({ paper: 'A4', overlap: 10 });
  expect(readChoice('{"paper":"A3","overlap":12,"calibration":{"xBar":149.6,"yBar":150.3}}')).toEqual({
    paper: 'A3',
    overlap: 12,
    calibration: { xBar: 149.6, yBar: 150.3 },
  });
  expect(readChoice('{"paper":"foolscap","overlap":-3,"calibration":{"xBar":5.9,"yBar":150}}')).toEqual({
    paper: 'A4',
    overlap: 10,
  });
  expect(readChoice('not json')).toEqual({ paper: 'A4', overlap: 10 });
  expect(barTroubleSays(149.5, speakerOf(square()))).toBeUndefined();
  expect(barTroubleSays(5.9, speakerOf(square()))).toContain('150');
});
