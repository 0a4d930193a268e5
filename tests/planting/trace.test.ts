/** A trace tells the planting that the movement gets, and how: two depths by hand (SOURCES.md), and a group solved together. */
import { expect, test } from 'vitest';
import { plantAnswer } from '../../electron/cli/plantAnswer.ts';
import { plantMovement, tracePlanting } from '../../solver/planting/index.ts';
import { movementOfFile, movementOfParts } from '../support/movements.ts';

const twoDistances = (third: readonly [number, number], more: readonly object[] = []) =>
  movementOfParts({
    arbors: [
      { id: 'centre', at: [0, 0] },
      { id: 'escape', at: [0, 45] },
      { id: 'third', at: third },
    ],
    rules: [
      { id: 'c', kind: 'held', point: 'centre', at: [0, 0] },
      { id: 'e', kind: 'held', point: 'escape', at: [0, 45] },
      { id: 'one', kind: 'distance', points: ['centre', 'third'], length: 28.8 },
      { id: 'two', kind: 'distance', points: ['escape', 'third'], length: 27.2 },
      ...more,
    ],
  });

test('a crossing: the points it is struck from, the branch taken and the other one', () => {
  const trace = tracePlanting(twoDistances([15, 20]));
  expect(trace.points.map(({ id, held }) => [id, held])).toEqual([
    ['centre', true],
    ['escape', true],
    ['third', false],
  ]);
  expect(trace.points[2]?.at).toEqual([expect.closeTo(16.6553, 4), expect.closeTo(23.49556, 4)]);
  expect(trace.rules.map(({ kind, from, role }) => [kind, from, role])).toEqual([
    ['distance', { kind: 'rule', rule: 'one' }, 'places'],
    ['distance', { kind: 'rule', rule: 'two' }, 'places'],
  ]);
  const step = trace.steps.find(({ kind }) => kind === 'crossing');
  expect(step).toMatchObject({ points: [2] });
  expect(step?.other).toEqual([expect.closeTo(-16.6553, 4), expect.closeTo(23.49556, 4)]);
  expect(trace).toMatchObject({ blocks: [], freeMotions: 0, disagreements: [] });
  // Sketched on the other side, the other branch is taken.
  expect(tracePlanting(twoDistances([-15, 20])).points[2]?.at[0]).toBeCloseTo(-16.6553, 4);
});

test('what a held place leaves to rules is to check, and each shows what it misses by', () => {
  const trace = tracePlanting(twoDistances([15, 20], [{ id: 'far', kind: 'held', point: 'third', at: [30, 30] }]));
  expect(trace.rules.map(({ role }) => role)).toEqual(['checks', 'checks']);
  for (const { missBy } of trace.rules) expect(missBy).toBeGreaterThan(1);
  expect(trace.disagreements).toEqual([]);
});

test('what is coupled is a block with its iterations, and the trace is plain data', () => {
  // Two arbors that hang on each other: no point has two placed neighbours until both are found.
  const at = { a: [0, 0], b: [60, 0], c: [10, 28], d: [48, 31], e: [29, 52] } as const;
  const apart = (p: keyof typeof at, q: keyof typeof at) => Math.hypot(at[p][0] - at[q][0], at[p][1] - at[q][1]);
  const pairs = [
    ['a', 'c'],
    ['b', 'd'],
    ['c', 'd'],
    ['c', 'e'],
    ['d', 'e'],
  ] as const;
  const movement = movementOfParts({
    arbors: Object.entries(at).map(([id, [x, y]]) => ({ id, at: [x + 0.3, y - 0.2] })),
    rules: [
      { id: 'ha', kind: 'held', point: 'a', at: at.a },
      { id: 'hb', kind: 'held', point: 'b', at: at.b },
      ...pairs.map(([p, q]) => ({ id: p + q, kind: 'distance', points: [p, q], length: apart(p, q) })),
      { id: 'line', kind: 'radius', point: 'e', centre: 'a', length: Math.hypot(...at.e) },
    ],
  });
  const trace = tracePlanting(movement);
  expect(trace.blocks.length).toBe(trace.work.blocks);
  expect(trace.blocks.length).toBeGreaterThan(0);
  expect(trace.work.iterations).toBeGreaterThan(0);
  for (const { missBy } of trace.rules) expect(missBy).toBeLessThan(1e-9);
  expect(JSON.parse(JSON.stringify(trace))).toEqual(trace);
});

test.each(['tide-dial', 'moons-of-jupiter', 'going-train'])(
  'the trace of %s has the places of its planting',
  (name) => {
    const movement = movementOfFile(`demo-data/${name}.json`);
    const { places } = plantMovement(movement);
    const traced = tracePlanting(movement).points.flatMap(({ id, at, state }) => (id ? [[id, ...at, state]] : []));
    expect(traced).toEqual([...places].map(([id, { x, y, state }]) => [id, x, y, state]));
  },
);

test('the command line prints the trace alone, as JSON', () => {
  const placed = plantMovement(twoDistances([15, 20]));
  const { text, code } = plantAnswer(placed, { trace: true });
  expect(JSON.parse(text)).toEqual(tracePlanting(placed.movement));
  expect(code).toBe(0);
});
