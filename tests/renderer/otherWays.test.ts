/** The same holes other ways, as the window lists them: every list is read back to the places, within its printed rounding. */
import { describe, expect, test } from 'vitest';
import { holesSeen, type WayChoice, wayText, zerosOf } from '../../renderer/sheets/otherWays.ts';
import { readTools } from '../../renderer/sheets/readTools.ts';
import { plateViewOf } from '../../solver/marking/index.ts';
import { placedByHand } from '../marking/placedByHand.ts';

const at = { a: [12.3456, 9.8765], b: [61.2344, 22.7071], c: [33.3333, 48.1234] } as const;
const data = (display: object) => ({
  display,
  plates: [
    {
      id: 'p',
      name: 'Plate',
      levels: { from: 0, to: 3 },
      outline: {
        kind: 'path',
        vertices: [
          { x: 0, y: 0 },
          { x: 80, y: 0 },
          { x: 80, y: 60 },
          { x: 0, y: 60 },
        ],
      },
    },
  ],
  marks: Object.entries(at).map(([id, place], index) => ({ id, name: `Hole ${id}`, at: place, hole: 2 + index })),
});
const placedIn = (display: object) =>
  placedByHand(data(display), Object.fromEntries(Object.entries(at).map(([id, place]) => [id, { at: place }])));
const usual: WayChoice = {
  way: 'readout',
  plate: 'p',
  face: 'up',
  first: undefined,
  second: undefined,
  ratio: 90,
  zeroDeg: 0,
  clockwise: false,
  finder: 0,
  button: 0,
  errors: [],
};

describe.each([
  [{ unit: 'mm', decimals: 3 }, 1],
  [{ unit: 'inch', decimals: 4 }, 25.4],
] as const)('in %j', (display, factor) => {
  const placed = placedIn(display);
  const half = (0.5 * factor) / 10 ** display.decimals + 1e-9;
  const view = plateViewOf(placed.movement, 'p', 'up');
  const read = (text: string) =>
    [...text.matchAll(/^\d+\. X (\S+) {2}Y (\S+) {2}Ø \S+ {2}Hole (.)$/gm)].map(([, x, y, id = '']) => ({
      x: Number(x) * factor,
      y: Number(y) * factor,
      id: id as keyof typeof at, // the tests' own names
    }));

  test.each(zerosOf(view, holesSeen(placed, 'p', 'up')).map(({ key }) => key))(
    'zero at "%s": all positive, from where the sheet says, back to the first, and the moves lead round',
    (key) => {
      const { text } = wayText(placed, { ...usual, first: key, positive: true, moves: true });
      const zero = zerosOf(view, holesSeen(placed, 'p', 'up')).find((each) => each.key === key)?.zero;
      const set = /Set X (\S+) Y (\S+) there/.exec(text);
      const preset = [Number(set?.[1] ?? 0) * factor, Number(set?.[2] ?? 0) * factor] as const;
      const lines = read(text);
      expect(lines).toHaveLength(3);
      for (const { x, y, id } of lines) {
        expect(Math.min(x, y)).toBeGreaterThanOrEqual(0);
        expect(Math.abs(x - preset[0] + (zero?.at[0] ?? Number.NaN) - at[id][0])).toBeLessThanOrEqual(half);
        expect(Math.abs(y - preset[1] + (zero?.at[1] ?? Number.NaN) - at[id][1])).toBeLessThanOrEqual(half);
      }
      const [first] = lines;
      const back = /^Back to 1: X (\S+) {2}Y (\S+) must/m.exec(text);
      expect(Number(back?.[1]) * factor).toBe(first?.x);
      expect(Number(back?.[2]) * factor).toBe(first?.y);
      // The printed moves add up to the printed readings, whatever their rounding, and close on the first hole.
      const moves = [...text.matchAll(/^(?:Back to )?\d+: move X (\S+) {2}Y (\S+) /gm)];
      expect(moves).toHaveLength(4);
      let [x, y] = [0, 0];
      for (const [index, [, dx, dy]] of moves.entries()) {
        x += Number(dx) * factor;
        y += Number(dy) * factor;
        expect(x).toBeCloseTo((lines[index] ?? first)?.x ?? Number.NaN, 9);
        expect(y).toBeCloseTo((lines[index] ?? first)?.y ?? Number.NaN, 9);
      }
    },
  );

  test('an edge finder of 6 at each corner: the spindle that stands beside both edges reads as set', () => {
    for (const [key, corner, spindle] of [
      [' lower left', [0, 0], [-3, -3]],
      [' upper right', [80, 60], [83, 63]],
      [' lower right', [80, 0], [83, -3]],
    ] as const) {
      const { text } = wayText(placed, { ...usual, first: key, finder: 6 });
      for (const { x, y, id } of read(text)) {
        expect(Math.abs(spindle[0] + x - at[id][0]), `${key} ${corner}`).toBeLessThanOrEqual(half);
        expect(Math.abs(spindle[1] + y - at[id][1])).toBeLessThanOrEqual(half);
      }
    }
    // Over a hole the spindle stands in its middle.
    const { text } = wayText(placed, { ...usual, first: 'a', finder: 6 });
    expect(read(text).find(({ id }) => id === 'a')).toMatchObject({ x: 0, y: 0 });
  });

  test('pins and buttons of their own diameters in each hole', () => {
    const pins = { a: 3, b: 4.5, c: 6 };
    const { text } = wayText(placed, { ...usual, way: 'buttons', first: 'a', second: 'b', pins });
    const distance = (one: keyof typeof at, other: keyof typeof at) =>
      Math.hypot(at[one][0] - at[other][0], at[one][1] - at[other][1]);
    const both = /Over both pins first: (\S+) must/.exec(text);
    expect(Math.abs(Number(both?.[1]) * factor - (3 + 4.5) / 2 - distance('a', 'b'))).toBeLessThanOrEqual(half);
    const line = /^Hole c, button \S+: over (\S+) to Hole a, over (\S+) to Hole b$/m.exec(text);
    expect(Math.abs(Number(line?.[1]) * factor - (6 + 3) / 2 - distance('c', 'a'))).toBeLessThanOrEqual(half);
    expect(Math.abs(Number(line?.[2]) * factor - (6 + 4.5) / 2 - distance('c', 'b'))).toBeLessThanOrEqual(half);
  });

  test('offsets from the edges that are chosen', () => {
    for (const [edges, x0, y0] of [
      [['left edge', 'lower edge'], 0, 0],
      [['right edge', 'upper edge'], 80, 60],
      [['right edge'], 80, 0],
    ] as const) {
      const { text } = wayText(placed, { ...usual, way: 'edges', edges });
      const lines = [...text.matchAll(/^Hole (.): (\S+) from the \S+ edge, (\S+) from the \S+ edge$/gm)];
      expect(lines).toHaveLength(3);
      for (const [, id = 'a', x, y] of lines) {
        const place = at[id as keyof typeof at]; // the tests' own names
        expect(Math.abs(Math.abs(x0 - place[0]) - Number(x) * factor)).toBeLessThanOrEqual(half);
        expect(Math.abs(Math.abs(y0 - place[1]) - Number(y) * factor)).toBeLessThanOrEqual(half);
      }
    }
  });
});

test('the maker’s tools are kept; what cannot be used is left at the usual', () => {
  expect(readTools('{"ratio":72,"clockwise":true,"errorText":"90 0.01","finder":6}')).toEqual({
    ratio: 72,
    clockwise: true,
    errorText: '90 0.01',
    finder: 6,
  });
  const usualTools = { ratio: 90, clockwise: false, errorText: '', finder: 0 };
  for (const text of [null, 'not kept', '{"ratio":13,"finder":-1,"errorText":5}', '[]']) {
    expect(readTools(text)).toEqual(usualTools);
  }
});
