/**
 * The maker's choices for drilling, stored in the movement, followed by the interpreter of NISTIR 6556's words: what the
 * program does is what was chosen. Everything that the window and the command line write comes from the same movement.
 */
import { describe, expect, it } from 'vitest';
import { seenHoles } from '../../solver/files/index.ts';
import { drillOptionsOf } from '../../solver/files/sheetsOf.ts';
import { writeDrill } from '../../solver/files/write/drill.ts';
import { holesOf, plateViewOf } from '../../solver/marking/index.ts';
import { applyEdit, readMovement, writeMovement } from '../../solver/movement/index.ts';
import { allSheets } from '../files/allSheets.ts';
import { movementOf, placedByHand } from '../marking/placedByHand.ts';
import { runProgram } from './ngcInterpreter.ts';

const PLATE = {
  title: 'Choices',
  plates: [
    {
      id: 'p',
      name: 'Plate',
      levels: { from: 0, to: 4 },
      outline: {
        kind: 'path',
        vertices: [
          { x: -10, y: -20 },
          { x: 90, y: -20 },
          { x: 90, y: 60 },
          { x: -10, y: 60 },
        ],
      },
    },
  ],
  marks: [
    { id: 'a', name: 'First', at: [10, 10], hole: 3 },
    { id: 'b', name: 'Second', at: [40, 30], hole: 3 },
    { id: 'c', name: 'Third', at: [25, 50], hole: 6 },
  ],
};
const PLACES = { a: { at: [10, 10] }, b: { at: [40, 30] }, c: { at: [25, 50] } } as const;
const placedWith = (drilling: object) => placedByHand({ ...PLATE, drilling }, PLACES);
function programOf(drilling: object, face?: 'up' | 'down') {
  const placed = placedWith(drilling);
  const view = plateViewOf(placed.movement, 'p', face);
  const buildable = ['Buildable as drawn.'];
  const text = writeDrill(seenHoles(view, holesOf(placed, 'p')), { ...drillOptionsOf(placed, view), buildable });
  return { text, run: runProgram(text) };
}

describe('the program does what the movement says', () => {
  it('nothing chosen: through the plate of 4 and 1 beyond it, spotted first, at the usual feeds', () => {
    const { text, run } = programOf({});
    expect(Math.min(...run.cuts.map(({ to }) => to))).toBeCloseTo(-5, 9);
    expect(run.cuts.filter(({ tool }) => tool === 1).map(({ to }) => to)).toEqual([-0.8, -0.8, -0.8]);
    expect(text).toMatch(/F60\.0/);
    expect(text).toMatch(/DRILLS GO 5\.0 DEEP - THE PLATE IS 4\.0 THICK: 1\.0 BEYOND IT/);
  });

  it('breakthrough, safe height, spotting, feeds and speeds', () => {
    const { text, run } = programOf({
      breakThrough: 2.5,
      safeHeight: 25,
      clearHeight: 2,
      spotDepth: 0.4,
      drillFeed: 45,
      drillSpeed: 900,
    });
    expect(Math.min(...run.cuts.map(({ to }) => to))).toBeCloseTo(-6.5, 9);
    expect(Math.max(...run.moves.map(({ z }) => z))).toBe(25);
    expect(run.moves.filter(({ across, fromZ }) => across && fromZ < 2)).toEqual([]);
    expect(run.cuts.filter(({ tool }) => tool === 1).every(({ to }) => to === -0.4)).toBe(true);
    expect(text).toMatch(/^S900 M3$/m);
    expect(text).toMatch(/^F45\.0$/m);
  });

  it('without spotting the first tool drills; a stated depth stops short, and the header says so', () => {
    const { text, run } = programOf({ spot: false, depth: 2.25 });
    expect(new Set(run.cuts.map(({ to }) => to))).toEqual(new Set([-2.25]));
    expect(text).not.toMatch(/SPOT/);
    expect(text.replace(/\)\n\(/g, ' ')).toMatch(/THE HOLES DO NOT GO THROUGH/);
  });

  it('a tool for a diameter: drill, number, speed and feed; what is left small is said', () => {
    const { text, run } = programOf({
      tools: [
        { diameter: 3, drill: 2.8, ream: true, number: 7, speed: 2200, feed: 90 },
        { diameter: 6, drill: 5.5 },
      ],
    });
    const [a, b] = [run.cuts.filter(({ tool }) => tool === 7), run.cuts.filter(({ tool }) => tool !== 7)];
    expect(new Set(a.map(({ x }) => x))).toEqual(new Set([20, 50]));
    expect(b.some(({ x }) => x === 35)).toBe(true);
    expect(text).toMatch(/T7 DRILL DIAMETER 2\.8: 2 HOLES - SPEED 2200 - FEED 90\.0/);
    expect(text).toMatch(/REAMER DIAMETER 3\.0: 2 HOLES/);
    expect(text.replace(/\)\n\(/g, ' ')).toMatch(/THIRD IS LEFT AT 5\.5: OPEN IT TO 6\.0 BY HAND/);
    // Tools that have no number of their own never take one that is given.
    const numbers = [...text.matchAll(/^T(\d+) M6$/gm)].map(([, number]) => number);
    expect(new Set(numbers).size).toBe(numbers.length);
  });

  it.each([
    ['lower left', 20, 30],
    ['lower right', -80, 30],
    ['upper left', 20, -50],
    ['upper right', -80, -50],
  ] as const)('zero at the %s corner, on both faces as seen', (corner, x, y) => {
    const { run } = programOf({ corner });
    expect(run.cuts.some((cut) => cut.x === x && cut.y === y)).toBe(true);
    // Mirrored, the plate reaches from −90 to 10 and the first hole stands at −10.
    const seen = programOf({ corner }, 'down').run;
    expect(seen.cuts.some((cut) => cut.x === (corner.endsWith('left') ? 80 : -20) && cut.y === y)).toBe(true);
  });

  it('zero at a point', () => {
    const { text, run } = programOf({ zeroAt: 'b' });
    expect(run.cuts.some(({ x, y }) => x === 0 && y === 0)).toBe(true);
    expect(run.cuts.some(({ x, y }) => x === -30 && y === -20)).toBe(true);
    expect(text).toMatch(/X0 Y0 IS SECOND/);
  });

  it('inches and cycles are read back to the same places within four decimals of an inch', () => {
    const { text, run } = programOf({ units: 'inch', cycles: true });
    expect(text).toMatch(/G20/);
    for (const [x, y] of [
      [20, 30],
      [50, 50],
      [35, 70],
    ] as const) {
      expect(run.cuts.some((cut) => Math.hypot(cut.x - x, cut.y - y) < 0.002)).toBe(true);
    }
  });

  it('the written file is that program', () => {
    const placed = placedWith({ breakThrough: 3, zeroAt: 'a' });
    const file = allSheets(placed).find(({ name }) => name.endsWith('-drill.ngc'));
    expect(file?.text).toBe(programOf({ breakThrough: 3, zeroAt: 'a' }).text);
    expect(allSheets(placed).at(-1)?.text).not.toMatch(/Problem/);
  });
});

describe('the choices in the file', () => {
  it('an old file has the usual choices, and none of them is written', () => {
    const old = movementOf(PLATE);
    expect(old.drilling.breakThrough).toBe(1);
    expect(writeMovement(old)).not.toContain('drilling');
  });
  it('what is chosen is kept, the rest left out; unknown fields stay', () => {
    const text = writeMovement(movementOf({ ...PLATE, drilling: { safeHeight: 20, cooling: 'oil', spot: true } }));
    expect(JSON.parse(text).drilling).toEqual({ safeHeight: 20, cooling: 'oil' });
  });
  it.each([
    [{ safeHeight: 2, clearHeight: 5 }, /drilling\.safeHeight.*below the 5/],
    [{ tools: [{ diameter: 3, drill: 3.1 }] }, /drilling\.tools\[0\]\.drill.*larger than the hole/],
    [{ tools: [{ diameter: 3 }, { diameter: 3 }] }, /drilling\.tools\[1\]\.diameter/],
    [{ zeroAt: 'nobody' }, /drilling\.zeroAt.*nobody/],
    [{ drillFeed: 0 }, /drilling\.drillFeed/],
  ])('%j is refused with the field, what was found and the remedy', (drilling, says) => {
    const reading = readMovement(JSON.stringify({ format: 'depthwright-movement', version: 2, ...PLATE, drilling }));
    expect(reading.kind).toBe('problems');
    if (reading.kind === 'problems') expect(reading.problems.map((each) => each.says).join('\n')).toMatch(says);
  });
  it('a zero that is removed is forgotten, one that is renamed is followed', () => {
    const movement = movementOf({ ...PLATE, drilling: { zeroAt: 'b' } });
    const gone = applyEdit(movement, { kind: 'remove', ids: ['b'] });
    expect(gone.kind === 'edited' && gone.movement.drilling.zeroAt).toBeUndefined();
    const renamed = applyEdit(movement, { kind: 'rename', from: 'b', to: 'bee' });
    expect(renamed.kind === 'edited' && renamed.movement.drilling.zeroAt).toBe('bee');
  });
});
