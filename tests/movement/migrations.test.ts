import { describe, expect, test } from 'vitest';
import { readMovement, writeMovement } from '../../solver/movement/index.ts';
import { movementOfText } from '../support/movements.ts';

/** A movement as the trial format had it. */
const VERSION_0 = {
  format: 'depthwright-movement',
  version: 0,
  title: 'Three arbors',
  unit: 'inch',
  'x-own': { kept: [1, 2] },
  pivots: [
    { id: 'centre', x: 0, y: 0, 'x-own': 1 },
    { id: 'second', x: 28, y: 3 },
  ],
  pillars: [{ id: 'p1', x: 40, y: 40, diameter: 8, hole: 4 }],
  wheels: [
    { id: 'great', pivot: 'centre', teeth: 60, module: 0.8, level: 3, thickness: 2 },
    { id: 'leaves', pivot: 'second', teeth: 12, module: 0.8, form: 'cycloidal', level: 3, thickness: 3 },
  ],
  rules: [
    { id: 'here', type: 'held', point: 'centre', at: [0, 0] },
    { id: 'd1', type: 'depth', wheels: ['great', 'leaves'] },
    { id: 'b1', type: 'bearing', point: 'second', centre: 'centre', angle: Math.PI / 6, off: true },
  ],
};

describe('a file of version 0', () => {
  const reading = readMovement(JSON.stringify(VERSION_0));

  test('is read as the present version, and says where it comes from', () => {
    expect(reading.kind === 'movement' && reading.migratedFrom).toBe(0);
    if (reading.kind !== 'movement') throw new Error(reading.problems[0]?.says);
    const { movement } = reading;
    expect(movement.version).toBe(2);
    expect(movement.display).toEqual({ unit: 'inch', decimals: 3 });
    expect(movement.arbors[1]).toMatchObject({ id: 'second', at: [28, 3] });
    expect(movement.posts[0]).toMatchObject({ id: 'p1', at: [40, 40], hole: 4 });
    expect(movement.wheels.map(({ arbor, size, form }) => [arbor, size, form])).toEqual([
      ['centre', { module: 0.8 }, 'involute'],
      ['second', { module: 0.8 }, 'cycloidal'],
    ]);
    const bearing = movement.rules[2];
    expect(bearing).toMatchObject({ kind: 'bearing', leaveOut: true });
    expect(bearing?.kind === 'bearing' && bearing.angle).toBeCloseTo(30, 12);
  });

  test('keeps what it does not know, and is written as the present version', () => {
    if (reading.kind !== 'movement') throw new Error(reading.problems[0]?.says);
    const written = JSON.parse(writeMovement(reading.movement));
    expect(written).toMatchObject({ version: 2, 'x-own': { kept: [1, 2] }, arbors: [{ 'x-own': 1 }, {}] });
    expect(JSON.stringify(written)).not.toMatch(/pivots|pillars|"type"/);
    const again = readMovement(writeMovement(reading.movement));
    expect(again).toEqual({ kind: 'movement', movement: reading.movement });
  });

  test('has its problems told in the present names', () => {
    const spoiled = structuredClone(VERSION_0) as Record<string, unknown>;
    spoiled['pivots'] = [{ id: 'centre', x: 0, y: 'low' }, 7];
    const problems = readMovement(JSON.stringify(spoiled));
    expect(problems.kind === 'problems' && problems.problems.map(({ path }) => path)).toEqual(
      expect.arrayContaining(['arbors[0].at[1]', 'arbors[1]']),
    );
    expect(problems.kind === 'problems' && problems.migratedFrom).toBe(0);
  });

  test('loses nothing where old and new names stand side by side', () => {
    const movement = movementOfText(
      JSON.stringify({ ...VERSION_0, arbors: [{ id: 'other', at: [5, 5] }], wheels: [], rules: [] }),
    );
    expect(movement.arbors.map(({ id }) => id)).toEqual(['other']);
    expect(Reflect.get(movement, 'pivots')).toHaveLength(2);
  });
});

describe('a file of version 1', () => {
  const VERSION_1 = JSON.stringify({
    format: 'depthwright-movement',
    version: 1,
    title: 'A hole in two plates',
    'x-own': [1],
    plates: ['base', 'top'].map((id, k) => ({
      id,
      outline: { kind: 'circle', centre: [0, 0], radius: 50 },
      levels: { from: 40 * k, to: 40 * k + 3 },
    })),
    arbors: [
      { id: 'centre', at: [0, 0] },
      { id: 'second', at: [28, 3] },
    ],
    rules: [
      { id: 'z', kind: 'held', point: 'centre', at: [0, 0] },
      { id: 'b', kind: 'distance', points: ['centre', 'second'], length: 28 },
      { id: 'a', kind: 'bearing', point: 'second', centre: 'centre', angle: 6, leaveOut: true },
    ],
    made: [
      { point: 'centre', state: 'marked' },
      { point: 'second', plate: 'base', state: 'drilled', at: [28, 3], earlier: [{ state: 'marked', at: [1, 2] }] },
    ],
  });
  const reading = readMovement(VERSION_1);

  test('is read with its number changed and nothing else', () => {
    if (reading.kind !== 'movement') throw new Error(JSON.stringify(reading.problems));
    expect(reading.migratedFrom).toBe(1);
    const same = movementOfText(VERSION_1.replace('"version":1', '"version":2'));
    expect(reading.movement).toEqual(same);
    expect(reading.movement.rules.map(({ id, duty }) => [id, duty])).toEqual([
      ['z', undefined],
      ['b', undefined],
      ['a', undefined],
    ]);
  });

  test('is written so that only the number differs', () => {
    if (reading.kind !== 'movement') throw new Error(JSON.stringify(reading.problems));
    const { version, ...rest } = JSON.parse(writeMovement(reading.movement));
    const { version: _, ...old } = JSON.parse(VERSION_1);
    expect(version).toBe(2);
    expect(rest).toEqual(old);
  });
});
