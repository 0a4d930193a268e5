/** Solids that cannot be: each is named on reading, with what was found and the remedy, so that no check has to guess. */
import { describe, expect, it } from 'vitest';
import { readMovement } from '../../solver/movement/index.ts';

const square = (corners: readonly (readonly [number, number])[]) => ({
  kind: 'path',
  vertices: corners.map(([x, y]) => ({ x, y })),
});
const wall = (outline: object, levels: object = { from: 0, to: 5 }) => ({ walls: [{ id: 'W', outline, levels }] });
const arbor = (more: object) => ({ arbors: [{ id: 'A', at: [0, 0], ...more }] });

const BAD = [
  { what: 'a wall of one corner', parts: wall(square([[0, 0]])), path: 'walls[0].outline.vertices' },
  {
    what: 'an outline that crosses itself',
    parts: wall(
      square([
        [0, 0],
        [10, 10],
        [10, 0],
        [0, 10],
      ]),
    ),
    path: 'walls[0].outline',
  },
  {
    what: 'a wall upside down',
    parts: wall(
      square([
        [0, 0],
        [9, 0],
        [9, 9],
      ]),
      { from: 5, to: 0 },
    ),
    path: 'walls[0].levels',
  },
  {
    what: 'a wall without height',
    parts: wall(
      square([
        [0, 0],
        [9, 0],
        [9, 9],
      ]),
      { from: 5, to: 5 },
    ),
    path: 'walls[0].levels',
  },
  {
    what: 'a bore smaller than its pivot',
    parts: arbor({ bearings: [{ at: 0, bore: 1, pivot: 1.2, length: 2 }] }),
    path: 'arbors[0].bearings[0].bore',
  },
  {
    what: 'a hand that ends before it begins',
    parts: arbor({ swept: [{ kind: 'hand', nearest: 9, farthest: 3, from: 0, to: 1 }] }),
    path: 'arbors[0].swept[0].nearest',
  },
  {
    what: 'a screw head upside down',
    parts: { posts: [{ id: 'P', at: [0, 0], diameter: 4, heads: [{ diameter: 8, from: 3, to: 1 }] }] },
    path: 'posts[0].heads[0]',
  },
  {
    what: 'a wheel without thickness',
    parts: {
      ...arbor({}),
      wheels: [{ id: 'w', arbor: 'A', teeth: 20, size: { module: 1 }, form: 'involute', level: 0, thickness: 0 }],
    },
    path: 'wheels[0].thickness',
  },
];

describe('bad solids are named and said', () => {
  it.each(BAD)('$what', ({ parts, path }) => {
    const reading = readMovement(JSON.stringify({ format: 'depthwright-movement', version: 2, ...parts }));
    if (reading.kind !== 'problems') throw new Error('it was read');
    const problem = reading.problems.find((each) => each.path.startsWith(path));
    expect(reading.problems.map((each) => each.path)).toContainEqual(expect.stringContaining(path));
    for (const words of [problem?.found, problem?.expected, problem?.remedy]) expect(words ?? '').not.toBe('');
  });
});
