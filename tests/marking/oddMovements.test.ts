/** Movements at the edge of what there is: nothing, one point, contested, enormous, tiny, far away, inches, strange names. */
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { handoverOf } from '../../solver/files/index.ts';
import { arborPieces } from '../../solver/files/pages/arborStrips.ts';
import { printedSheetsOf, SheetFonts } from '../../solver/files/pages/index.ts';
import { areaOfOutline, boundsOfOutline } from '../../solver/geometry/index.ts';
import { markingSteps, plateViewOf } from '../../solver/marking/index.ts';
import { seenOutline } from '../../solver/marking/plateView.ts';
import { plantMovement } from '../../solver/planting/index.ts';
import type { PlacedMovement } from '../../solver/planting/placed.ts';
import { sheetWordsOf } from '../../solver/words/shop/index.ts';
import { allSheets } from '../files/allSheets.ts';
import { movementOf, placedByHand } from './placedByHand.ts';
import { followSteps } from './simulatedMaker.ts';
import { stepsSay, stepsText } from './stepsTold.ts';

const face = (name: string) =>
  new Uint8Array(readFileSync(new URL(`../../node_modules/dejavu-fonts-ttf/ttf/${name}.ttf`, import.meta.url)));
const settings = {
  fonts: new SheetFonts({ regular: face('DejaVuSans'), bold: face('DejaVuSans-Bold') }),
  words: sheetWordsOf,
};
const square = (size: number, x = 0, y = 0) => ({
  kind: 'path',
  vertices: [
    { x, y },
    { x: x + size, y },
    { x: x + size, y: y + size },
    { x, y: y + size },
  ],
});
const plate = (outline: object) => ({ id: 'p', name: 'Plate', levels: { from: 0, to: 2 }, outline });

/** Three points at a scale and an offset, planted. */
function threePoints(size: number, offset: number): PlacedMovement {
  const at = (x: number, y: number) => [offset + x * size, offset + y * size] as const;
  return plantMovement(
    movementOf({
      plates: [plate(square(size, offset, offset))],
      marks: [
        { id: 'a', at: at(0.2, 0.2), hole: size / 50 },
        { id: 'b', at: at(0.7, 0.25), hole: size / 50 },
        { id: 'c', at: at(0.5, 0.6), hole: size / 50 },
      ],
      rules: [
        { id: 'ha', kind: 'held', point: 'a', at: at(0.2, 0.2) },
        { id: 'hb', kind: 'held', point: 'b', at: at(0.7, 0.25) },
        { id: 'ac', kind: 'distance', points: ['a', 'c'], length: size * 0.5 },
        { id: 'bc', kind: 'distance', points: ['b', 'c'], length: size * 0.4 },
      ],
    }),
  );
}

describe.each([
  [0.5, 0],
  [100, 0],
  [100, 10_000],
  [100, -10_000],
  [10_000, 0],
])('a plate of %d mm at %d', (size, offset) => {
  const placed = threePoints(size, offset);
  it('is marked to the maker’s last digit', () => {
    const text = stepsText(placed, { plate: 'p', display: { unit: 'mm', decimals: 10 } });
    const edges = { left: offset, lower: offset, right: offset + size, upper: offset + size };
    const struck = followSteps(text, { edges });
    const steps = markingSteps(placed, { plate: 'p' });
    expect(steps.map((step) => step.kind)).toEqual(['offset', 'offset', 'arcs']);
    for (const { label, place } of steps) {
      const at = struck.get(label) ?? [Number.NaN, Number.NaN];
      expect(Math.hypot(at[0] - place[0], at[1] - place[1])).toBeLessThan(1e-6);
    }
  });
  it('gives whole files', () => {
    for (const { name, bytes } of handoverOf(placed, { settings })) {
      expect(bytes.length).toBeGreaterThan(10);
      if (!name.endsWith('.pdf')) expect(new TextDecoder().decode(bytes)).not.toMatch(/NaN|Infinity|undefined/);
    }
    const pages = printedSheetsOf(placed, settings).reduce((sum, sheet) => sum + sheet.pages.length, 0);
    expect(pages).toBeLessThan(200);
  });
});

describe('strange movements', () => {
  it('nothing at all, and one point without a plate', () => {
    for (const data of [
      { title: '' },
      { marks: [{ id: 'a', at: [0, 0], hole: 1 }], rules: [{ id: 'h', kind: 'held', point: 'a', at: [0, 0] }] },
    ]) {
      const placed = plantMovement(movementOf(data));
      for (const { name, bytes } of handoverOf(placed, { settings })) {
        if (!name.endsWith('.pdf')) expect(new TextDecoder().decode(bytes), name).not.toMatch(/NaN|Infinity|undefined/);
      }
    }
  });

  it('points whose rules disagree are not marked, and say so', () => {
    const placed = plantMovement(
      movementOf({
        plates: [plate(square(100))],
        marks: [
          { id: 'a', at: [20, 20], hole: 1 },
          { id: 'b', at: [80, 20], hole: 1 },
          { id: 'c', at: [50, 50], hole: 1 },
        ],
        rules: [
          { id: 'ha', kind: 'held', point: 'a', at: [20, 20] },
          { id: 'hb', kind: 'held', point: 'b', at: [80, 20] },
          { id: 'ac', kind: 'distance', points: ['a', 'c'], length: 10 },
          { id: 'bc', kind: 'distance', points: ['b', 'c'], length: 10 },
        ],
      }),
    );
    const step = markingSteps(placed, { plate: 'p' }).find((each) => each.point === 'c');
    expect(step).toMatchObject({ kind: 'unsettled', loci: [] });
    expect(stepsSay(placed, { plate: 'p' }).join()).toMatch(/rules disagree/);
  });

  it('drilled holes are on the metal first, and become the datum', () => {
    const made = [
      { point: 'a', state: 'drilled', at: [20.01, 20.02] },
      { point: 'b', state: 'drilled', at: [70, 25] },
    ];
    const base = threePoints(100, 0).movement;
    const placed = plantMovement(movementOf({ ...JSON.parse(JSON.stringify(base)), made }));
    const steps = markingSteps(placed, { plate: 'p' });
    expect(steps.map(({ kind, done }) => [kind, done])).toEqual([
      ['already', true],
      ['already', true],
      ['arcs', false],
    ]);
    expect(steps[1]?.check).toMatchObject({ from: 'a', distance: expect.closeTo(Math.hypot(49.99, 4.98), 9) });
  });

  it('a datum that the plate does not have is replaced, and the first step says so', () => {
    const [first] = markingSteps(threePoints(100, 0), { plate: 'p', datum: { kind: 'centre' } });
    expect(first?.warns).toEqual({ kind: 'otherDatum' });
    const [says] = stepsSay(threePoints(100, 0), { plate: 'p', datum: { kind: 'centre' } });
    expect(says).toMatch(/datum asked for is not on this plate/);
    expect(() => markingSteps(threePoints(100, 0), { plate: 'q' })).toThrow(
      /"q" is not in the movement; its plates are: p/,
    );
  });

  it('two points of one name are told apart, and line breaks in names stay out of sheets', () => {
    const placed = placedByHand(
      {
        plates: [plate(square(50))],
        marks: [
          { id: 'a', name: 'Post', at: [10, 10], hole: 1 },
          { id: 'b', name: 'Post', at: [30, 10], hole: 1 },
          { id: 'c', name: 'Two\nlines', at: [20, 30], hole: 1 },
        ],
      },
      { a: { at: [10, 10], kind: 'given' }, b: { at: [30, 10], kind: 'given' }, c: { at: [20, 30] } },
    );
    const labels = markingSteps(placed, { plate: 'p' }).map((step) => step.label);
    expect(labels).toEqual(['Post (a)', 'Post (b)', 'Two lines']);
  });

  it('inches are printed where the maker works in inches', () => {
    const placed = plantMovement(
      movementOf({
        ...JSON.parse(JSON.stringify(threePoints(100, 0).movement)),
        display: { unit: 'inch', decimals: 4 },
      }),
    );
    const text = stepsText(placed, { plate: 'p' });
    expect(text).toContain('Lengths in in.');
    expect(text).toContain('lines at 0.78740 from the left edge');
    expect(allSheets(placed).at(-1)?.text).not.toContain('Problem');
  });
});

describe('a mirrored outline', () => {
  it('keeps its area and its arcs', () => {
    const outline = {
      kind: 'path',
      vertices: [
        { x: 0, y: 0, bulge: 0 },
        { x: 80, y: 0, bulge: 0.7 },
        { x: 80, y: 50, bulge: 0 },
        { x: 20, y: 60, bulge: -0.3 },
      ],
    };
    const placed = placedByHand({ plates: [plate(outline)] }, {});
    const own = placed.movement.plates[0]?.outline;
    if (!own) throw new Error('the plate has an outline');
    const seen = seenOutline(plateViewOf(placed.movement, 'p', 'down'), own);
    // Turned over, the vertices run the other way round.
    expect(areaOfOutline(seen)).toBeCloseTo(-areaOfOutline(own), 9);
    const [minX, minY, maxX, maxY] = boundsOfOutline(own);
    const bounds = boundsOfOutline(seen);
    [-maxX, minY, -minX, maxY].forEach((value, index) => {
      expect(bounds[index]).toBeCloseTo(value, 9);
    });
  });
});

describe('arbor strips', () => {
  it('put the shoulders where the pivots end', () => {
    const placed = placedByHand(
      {
        arbors: [
          {
            id: 'a',
            at: [0, 0],
            diameter: 4,
            levels: { from: -3, to: 40 },
            bearings: [
              { at: -3, bore: 2.02, pivot: 2, length: 3 },
              { at: 37, bore: 2.02, pivot: 2, length: 3 },
            ],
            collars: [{ diameter: 8, from: 10, to: 12 }],
          },
        ],
      },
      { a: { at: [0, 0] } },
    );
    const [arbor] = placed.movement.arbors;
    const pieces = arbor ? arborPieces(placed, arbor) : [];
    expect(pieces.map(({ kind, from, to }) => [kind, from, to])).toEqual([
      ['pivot', -3, 0],
      ['body', 0, 37],
      ['collar', 10, 12],
      ['pivot', 37, 40],
    ]);
  });
});
