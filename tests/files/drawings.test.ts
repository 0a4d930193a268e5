import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { extentsOf } from '../../solver/files/draw/extents.ts';
import { lettersOf, textWidth } from '../../solver/files/draw/lettering.ts';
import { plateDrawing } from '../../solver/files/draw/plateDrawing.ts';
import { LETTERS } from '../../solver/files/draw/strokeLetters.ts';
import { preflight } from '../../solver/files/index.ts';
import { writeDrill } from '../../solver/files/write/drill.ts';
import { passesOf } from '../../solver/files/write/drillPasses.ts';
import { writeDxf } from '../../solver/files/write/dxf.ts';
import { writeHoleTable } from '../../solver/files/write/holeTable.ts';
import { writeSvg } from '../../solver/files/write/svg.ts';
import { type Hole, holesOf } from '../../solver/marking/index.ts';
import { decimalFixed, trimmed } from '../../solver/movement/decimal.ts';
import { everyConstruction, placedByHand } from '../marking/placedByHand.ts';
import { allSheets } from './allSheets.ts';

const placed = everyConstruction();

describe('numbers in files', () => {
  it('are plain at any size', () => {
    expect([decimalFixed(-1e-9, 3), decimalFixed(1e-7, 4), decimalFixed(123456.789, 2)]).toEqual([
      '0.000',
      '0.0000',
      '123456.79',
    ]);
    expect([trimmed(2.5, 4), trimmed(2, 4), trimmed(2, 4, 1), trimmed(-1e-12, 6, 1)]).toEqual([
      '2.5',
      '2',
      '2.0',
      '0.0',
    ]);
    expect(() => decimalFixed(Number.NaN, 2)).toThrow(/finite/);
    expect(() => decimalFixed(1e15, 2)).toThrow(/below/);
  });
  it('never show an exponent, a comma or minus zero', () => {
    fc.assert(
      fc.property(fc.double({ min: -1e6, max: 1e6, noNaN: true }), fc.integer({ min: 0, max: 10 }), (value, places) => {
        const text = trimmed(value, places, 1);
        expect(text).toMatch(/^-?\d+(\.\d+)?$/);
        expect(text).not.toMatch(/^-0(\.0+)?$/);
        expect(Math.abs(Number(text) - value)).toBeLessThanOrEqual(
          0.5000001 * 10 ** -places + Math.abs(value) * Number.EPSILON,
        );
      }),
    );
  });
});

describe('lettering', () => {
  it('has every printable ASCII character', () => {
    for (let code = 32; code < 127; code++) expect(LETTERS[String.fromCharCode(code)]).toBeDefined();
  });
  it('keeps strokes within the letter and joins marks to it', () => {
    for (const [character, code] of Object.entries(LETTERS)) {
      const [letter] = lettersOf(character);
      const xs = letter?.strokes.flatMap((stroke) => stroke.filter((_, i) => i % 2 === 0)) ?? [];
      expect(Math.max(0, ...xs), character).toBeLessThanOrEqual(Number(code.split('|')[0]));
      for (const stroke of letter?.strokes ?? []) expect(stroke.length, character).toBeGreaterThanOrEqual(4);
    }
    expect(lettersOf('ö')[0]?.strokes.length).toBe((lettersOf('o')[0]?.strokes.length ?? 0) + 2);
    expect(lettersOf('í')[0]?.strokes.length).toBe(2);
  });
  it('writes other scripts by sound, and a box for what it does not know', () => {
    expect(lettersOf('Ж')).toEqual(lettersOf('Zh'));
    expect(lettersOf('ά')[0]?.strokes[0]).toEqual(lettersOf('a')[0]?.strokes[0]);
    expect(lettersOf('歯')).toHaveLength(1);
    expect(lettersOf('a\u0007b')).toEqual(lettersOf('ab'));
  });
  it('is as wide as its letters', () => {
    // O is 6 wide and I 0 on a grid of 7 a capital, with 2 between.
    expect(textWidth('OI', 7)).toBe(8);
    expect(textWidth('', 7)).toBe(0);
  });
});

describe('tools for holes', () => {
  const hole = (diameter: number): Hole => ({
    ...{ id: 'h', points: ['h'], label: 'H', x: 0, y: 0, through: true, state: 'toMark', finish: 'ream' },
    diameter,
  });
  const made = (diameter: number, choice?: Parameters<typeof passesOf>[1]) =>
    passesOf([hole(diameter)], choice).map(({ work, diameter: tool }) => `${work} ${tool}`);

  it('a reamer takes off its allowance, larger above 5 mm', () => {
    expect(made(3)).toEqual(['spot 0', 'drill 2.9', 'ream 3']);
    expect(made(5)).toEqual(['spot 0', 'drill 4.9', 'ream 5']);
    expect(made(5.01)).toEqual(['spot 0', 'drill 4.81', 'ream 5.01']);
    expect(made(3, { reamAllowance: 0.5, spot: false })).toEqual(['drill 2.5', 'ream 3']);
  });
  it('a hole that leaves nothing to drill before the reamer is drilled to size', () => {
    expect(made(0.08)).toEqual(['spot 0', 'drill 0.08']);
    expect(made(0.1)).toEqual(['spot 0', 'drill 0.1']);
    expect(made(0.11)).toEqual(['spot 0', 'drill 0.01', 'ream 0.11']);
    expect(made(4, { reamAllowance: 5 })).toEqual(['spot 0', 'drill 4']);
  });
  it("the maker's line for a diameter comes first, and his numbers are kept", () => {
    expect(made(0.08, { tools: [{ diameter: 0.08, drill: 0.07 }] })).toEqual(['spot 0', 'drill 0.07', 'ream 0.08']);
    expect(made(3, { tools: [{ diameter: 3, ream: false }] })).toEqual(['spot 0', 'drill 3']);
    const passes = passesOf([hole(2), hole(3)], { spot: false, tools: [{ diameter: 3, number: 1 }] });
    expect(passes.map(({ diameter, tool }) => [diameter, tool])).toEqual([
      [1.9, 2],
      [2.9, 1],
      [2, 3],
      [3, 4],
    ]);
  });
});

describe('holes', () => {
  it('share a place, take the bearing and skip what is not settled', () => {
    const holes = holesOf(placed, 'base');
    const centre = holes.find((hole) => hole.id === 'centre');
    expect(centre).toMatchObject({
      points: ['centre', 'pipe'],
      diameter: 5,
      finish: 'ream',
      label: 'Centre / Hour pipe',
    });
    expect(holes.find((hole) => hole.id === 'third')?.note).toMatch(/no bearing/);
    expect(holes.some((hole) => hole.id === 'loose')).toBe(false);
    expect(holes).toHaveLength(13);
  });
  it('follow bearings to their plates', () => {
    const plate = (id: string, from: number) => ({
      id,
      levels: { from, to: from + 2 },
      outline: { kind: 'circle', centre: [0, 0], radius: 20 },
    });
    const two = placedByHand(
      {
        plates: [plate('front', 0), plate('back', 20)],
        arbors: [
          {
            id: 'a',
            at: [0, 0],
            bearings: [
              { plate: 'front', bore: 2, pivot: 1.9, length: 2 },
              { at: 20, bore: 1.5, pivot: 1.4, length: 2, kind: 'bush', outer: 4 },
            ],
          },
        ],
        posts: [{ id: 'p', at: [10, 0], diameter: 5, hole: 2.5 }],
        marks: [{ id: 'm', at: [0, 10], plate: 'back' }],
      },
      { a: { at: [0, 0] }, p: { at: [10, 0] }, m: { at: [0, 10] } },
    );
    const sizes = (id: string) => holesOf(two, id).map((hole) => [hole.id, hole.diameter]);
    expect(sizes('front')).toEqual([
      ['a', 2],
      ['p', 2.5],
    ]);
    expect(sizes('back')).toEqual([
      ['a', 4],
      ['p', 2.5],
    ]);
  });
});

describe('drawings', () => {
  const up = plateDrawing(placed, { plate: 'base', face: 'up', density: 'context' });
  const down = plateDrawing(placed, { plate: 'base', face: 'down', density: 'context' });
  const layer = (drawing: typeof up, name: string) => drawing.layers.find((each) => each.name === name)?.shapes ?? [];

  it('a cut drawing holds what is cut and is as large as the plate', () => {
    const cut = plateDrawing(placed, { plate: 'base', density: 'cut' });
    expect(cut.layers.map(({ name }) => name)).toEqual(['OUTLINE', 'HOLES']);
    expect(cut.extents).toEqual([0, 0, 100, 90]);
  });
  it('mirroring twice is the same again, and no text is mirrored', () => {
    const circles = (drawing: typeof up) => layer(drawing, 'HOLES').flatMap((s) => (s.kind === 'circle' ? [s] : []));
    const back = circles(down).map((shape) => ({ ...shape, centre: [-shape.centre[0] + 0, shape.centre[1]] }));
    expect(back).toEqual(circles(up).map((shape) => ({ ...shape, centre: [...shape.centre] })));
    const words = (drawing: typeof up) =>
      layer(drawing, 'LETTERING').flatMap((s) => (s.kind === 'text' ? [s.text] : []));
    expect(words(down).slice(0, 5)).toEqual(words(up).slice(0, 5));
    expect(words(down).at(-1)).toContain('other face, seen from below (mirrored)');
  });
  it('shows pitch circle and teeth of the two depths by hand', () => {
    // 64 teeth of module 0.8: pitch radius 25.6; tip radius 26.704 by the BS 978 addendum 1.38 m (published table).
    const radii = layer(up, 'PITCH').map((shape) => (shape.kind === 'circle' ? shape.radius : 0));
    expect(radii.some((radius) => Math.abs(radius - 25.6) < 1e-9)).toBe(true);
    // The teeth of the same wheel, about the same centre, reach out to its tip circle.
    const centre = layer(up, 'PITCH').find((shape) => shape.kind === 'circle' && Math.abs(shape.radius - 25.6) < 1e-9);
    if (centre?.kind !== 'circle') throw new Error('the pitch circle of the centre wheel');
    const reaches = layer(up, 'TEETH').map((shape) =>
      shape.kind === 'path'
        ? Math.max(...shape.vertices.map(({ x, y }) => Math.hypot(x - centre.centre[0], y - centre.centre[1])))
        : 0,
    );
    expect(reaches.some((reach) => Math.abs(reach - 26.704) < 0.031)).toBe(true);
    expect(layer(up, 'TIPS')).toEqual([]);
  });
  it('seen from the other side the teeth stand mirrored, and turn the other way', () => {
    const down = plateDrawing(placed, { plate: 'base', face: 'down', density: 'context' });
    const up = plateDrawing(placed, { plate: 'base', face: 'up', density: 'context' });
    const [seen, mirrored] = [up, down].map((drawing) => layer(drawing, 'TEETH'));
    expect(mirrored).toHaveLength(seen?.length ?? 0);
    seen?.forEach((shape, index) => {
      const other = mirrored?.[index];
      if (shape.kind !== 'path' || other?.kind !== 'path') throw new Error('teeth are paths');
      shape.vertices.forEach(({ x, y, bulge }, at) => {
        expect(other.vertices[at]?.x).toBeCloseTo(-x, 12);
        expect(other.vertices[at]?.y).toBe(y);
        expect(other.vertices[at]?.bulge).toBeCloseTo(-bulge, 12);
      });
    });
  });
  it('bounds everything that is drawn', () => {
    const [minX, minY, maxX, maxY] = extentsOf(up.layers);
    expect(up.extents[0]).toBeLessThan(minX);
    expect(up.extents[3]).toBeGreaterThan(maxY);
    expect(maxX - minX).toBeGreaterThan(99);
    expect(minY).toBeLessThan(0);
  });
});

describe('sheets', () => {
  it('have the same bytes each time and pass their own pre-flight', () => {
    const first = allSheets(placed);
    expect(allSheets(everyConstruction())).toEqual(first);
    const report = first.find(({ name }) => name === 'preflight.txt')?.text ?? '';
    expect(report).not.toContain('Problem');
    expect(report.match(/: fine\./g)).toHaveLength(10);
    for (const { name } of first) expect(name).toMatch(/^[a-z0-9.-]+$/);
  });
  it('come out for nothing at all', () => {
    const empty = placedByHand({ title: 'Empty' }, {});
    for (const { text } of allSheets(empty)) expect(text).not.toMatch(/NaN|Infinity|undefined/);
  });
  it('give plates of one name their own files', () => {
    const plate = (id: string) => ({
      id,
      name: 'Platine / Ärmel',
      levels: { from: 0, to: 1 },
      outline: { kind: 'circle', centre: [0, 0], radius: 9 },
    });
    const names = allSheets(placedByHand({ plates: [plate('a'), plate('b')] }, {})).map(({ name }) => name);
    expect(new Set(names).size).toBe(names.length);
    expect(names[0]).toBe('platine-armel-marked-face-cut.dxf');
  });
  it('tables keep commas and formulas of names harmless', () => {
    const [hole] = holesOf(placed, 'base');
    if (!hole) throw new Error('the plate has holes');
    const text = writeHoleTable([
      { ...hole, label: '=SUM(A1), "left"' },
      { ...hole, x: -0.00001, y: -12.5 },
    ]);
    expect(text.split('\r\n')[1]).toContain('"\'=SUM(A1), ""left"""');
    expect(text).toContain(',0.0000,-12.5000,');
    expect(preflight({ name: 'a.csv', format: 'table', text })).toMatchObject({ problems: [] });
    expect(preflight({ name: 'a.csv', format: 'table', text }).holes).toHaveLength(2);
  });
  it('no writer lets a number through that is none', () => {
    const [hole] = holesOf(placed, 'base');
    if (!hole) throw new Error('the plate has holes');
    const broken = [{ ...hole, x: Number.NaN }];
    expect(() => writeDrill(broken)).toThrow(/cannot be printed/);
    expect(() => writeHoleTable(broken)).toThrow(/cannot be printed/);
    const drawing = plateDrawing(placed, { plate: 'base', density: 'cut' });
    const bad = {
      ...drawing,
      layers: [{ name: 'HOLES', shapes: [{ kind: 'circle', centre: [0, 0], radius: Number.POSITIVE_INFINITY }] }],
    } as const;
    expect(() => writeDxf(bad)).toThrow(/cannot be printed/);
    expect(() => writeSvg(bad)).toThrow(/cannot be printed/);
  });
});

describe('labels', () => {
  const points = (count: number, apart: number) =>
    Object.fromEntries(
      Array.from({ length: count }, (_, i) => [
        `p${i}`,
        { at: [10 + (i % 10) * apart, 10 + Math.floor(i / 10) * apart] as const },
      ]),
    );
  const drawn = (count: number, apart: number) => {
    const places = points(count, apart);
    const marks = Object.entries(places).map(([id, { at }]) => ({ id, name: `A rather long name ${id}`, at, hole: 1 }));
    const crowd = plateDrawing(placedByHand({ marks }, places));
    const shapes = crowd.layers.find(({ name }) => name === 'LETTERING')?.shapes ?? [];
    return shapes.flatMap((shape) => (shape.kind === 'text' ? [shape.text] : []));
  };
  it('are names with room for them, and numbers alone in a crowd', () => {
    expect(drawn(4, 80).slice(0, 2)).toEqual(['1 A rather long name p0', '2 A rather long name p1']);
    expect(drawn(100, 9).slice(0, 3)).toEqual(['1', '2', '3']);
  });
});
