/** The same holes told in other ways: each list is read back from its text to the same places within its printed rounding. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type Hole, holesOf, plateViewOf } from '../../solver/marking/index.ts';
import { overPins } from '../../solver/marking/ways/betweenHoles.ts';
import {
  buttonList,
  chordList,
  distanceTable,
  edgeOffsets,
  positiveZero,
  readoutList,
  rotaryList,
} from '../../solver/marking/ways/index.ts';
import { readsHighAt } from '../../solver/marking/ways/rotaryTable.ts';
import { fifteenHoles } from '../files/testPlate.ts';
import { everyConstruction, placedByHand } from './placedByHand.ts';

const MM = { unit: 'mm', decimals: 3 } as const;
const INCH = { unit: 'inch', decimals: 4 } as const;
const half = (display: typeof MM | typeof INCH) =>
  0.5 * 10 ** -display.decimals * (display.unit === 'inch' ? 25.4 : 1) + 1e-9;
const toMm = (text: string | undefined, display: typeof MM | typeof INCH) =>
  Number(text) * (display.unit === 'inch' ? 25.4 : 1);
const holes = fifteenHoles();
const byLabel = new Map(holes.map((hole) => [hole.label, hole]));

describe.each([MM, INCH])('in $unit', (display) => {
  it('readout: absolute, all positive from a corner, back to the first', () => {
    const zero = positiveZero(holes, 5);
    const list = readoutList(holes, { display, zero, zeroSays: 'a corner' });
    expect(list.allPositive).toBe(true);
    const lines = [...list.text.matchAll(/^\d+\. X (\S+) {2}Y (\S+) {2}Ø \S+ {2}(.*)$/gm)];
    expect(lines).toHaveLength(15);
    for (const [, x, y, label = ''] of lines) {
      const hole = byLabel.get(label);
      expect(Math.abs(toMm(x, display) + zero[0] - (hole?.x ?? Number.NaN))).toBeLessThanOrEqual(half(display));
      expect(Math.abs(toMm(y, display) + zero[1] - (hole?.y ?? Number.NaN))).toBeLessThanOrEqual(half(display));
    }
    const back = /^Back to 1: X (\S+) {2}Y (\S+)/m.exec(list.text);
    expect([back?.[1], back?.[2]]).toEqual([lines[0]?.[1], lines[0]?.[2]]);
    let [x, y] = [0, 0];
    for (const line of list.lines) {
      x += line.dx;
      y += line.dy;
      expect(x).toBeCloseTo(line.x, 9);
      expect(y).toBeCloseTo(line.y, 9);
    }
  });

  it('dividers: chords from two holes and the side', () => {
    const [first, second] = holes;
    if (!first || !second) throw new Error('fifteen holes');
    const { text } = chordList(holes, first, second, display);
    const base = Number(/, (\S+) apart\./.exec(text)?.[1]) * (display.unit === 'inch' ? 25.4 : 1);
    const lines = [...text.matchAll(/^(.*): (\S+) from .*?, (\S+) from .*, (on the left|on the right|on the line)$/gm)];
    expect(lines).toHaveLength(13);
    for (const [, label = '', a, b, side] of lines) {
      compareTrilaterated(
        label,
        toMm(a, display),
        toMm(b, display),
        base,
        side === 'on the left',
        first,
        second,
        half(display),
      );
    }
  });

  it('over buttons and pins', () => {
    const [first, second] = holes;
    if (!first || !second) throw new Error('fifteen holes');
    const { text } = buttonList(holes, first, second, display, () => 6.35);
    const pin = 6.35;
    const lines = [...text.matchAll(/^(.*), button (\S+): over (\S+) to .*, over (\S+) to .*$/gm)];
    expect(lines).toHaveLength(13);
    for (const [, label = '', , a, b] of lines) {
      const hole = byLabel.get(label);
      const d1 = Math.hypot((hole?.x ?? 0) - first.x, (hole?.y ?? 0) - first.y);
      const d2 = Math.hypot((hole?.x ?? 0) - second.x, (hole?.y ?? 0) - second.y);
      expect(Math.abs(toMm(a, display) - pin - d1)).toBeLessThanOrEqual(half(display));
      expect(Math.abs(toMm(b, display) - pin - d2)).toBeLessThanOrEqual(half(display));
    }
  });

  it.each([40, 60, 72, 90])('rotary table %d:1, one way round, errors of the table put in', (ratio) => {
    const centre = [3, -2] as const;
    const errors = [
      { atDeg: 0, readsHighDeg: 0.01 },
      { atDeg: 180, readsHighDeg: 0.09 },
      { atDeg: 270, readsHighDeg: -0.02 },
    ];
    for (const sense of ['anticlockwise', 'clockwise'] as const) {
      const list = rotaryList(holes, { display, centre, centreSays: 'C', ratio, zeroDeg: 30, sense, errors });
      const lines = [
        ...list.text.matchAll(/^\d+\. r (\S+) {2}(\S+)° {2}(\d+) turns (\d+)° (\d+)′ (\d+)″ .* {2}Ø \S+ {2}(.*)$/gm),
      ];
      expect(lines).toHaveLength(15);
      let before = -1;
      for (const [, r, , turns, degrees, minutes, seconds, label = ''] of lines) {
        const reading = (Number(turns) * 360) / ratio + Number(degrees) + Number(minutes) / 60 + Number(seconds) / 3600;
        // The true angle is where the table's reading less its error there agrees; the error is small, so twice is enough.
        let angle = reading - readsHighAt(errors, reading);
        angle = reading - readsHighAt(errors, angle);
        expect(angle).toBeGreaterThan(before);
        before = angle;
        const turn = ((sense === 'clockwise' ? -angle : angle) + 30) * (Math.PI / 180);
        const radius = toMm(r, display);
        const hole = byLabel.get(label);
        const miss = Math.hypot(
          centre[0] + radius * Math.cos(turn) - (hole?.x ?? Number.NaN),
          centre[1] + radius * Math.sin(turn) - (hole?.y ?? Number.NaN),
        );
        // Half a printed length along the radius, half a second round.
        expect(miss).toBeLessThanOrEqual(Math.hypot(half(display), (radius * 0.51 * Math.PI) / 180 / 3600));
      }
      expect(list.text).toContain(`Close: ${ratio} turns 0° 0′ 0″`);
    }
  });
});

function compareTrilaterated(
  label: string,
  a: number,
  b: number,
  base: number,
  left: boolean,
  first: Hole,
  second: Hole,
  by: number,
) {
  const hole = byLabel.get(label);
  const true1 = Math.hypot((hole?.x ?? 0) - first.x, (hole?.y ?? 0) - first.y);
  const true2 = Math.hypot((hole?.x ?? 0) - second.x, (hole?.y ?? 0) - second.y);
  expect(Math.abs(a - true1)).toBeLessThanOrEqual(by);
  expect(Math.abs(b - true2)).toBeLessThanOrEqual(by);
  const along = (a * a - b * b + base * base) / (2 * base);
  const off = Math.sqrt(Math.max(0, a * a - along * along)) * (left ? 1 : -1);
  const ux = (second.x - first.x) / base;
  const uy = (second.y - first.y) / base;
  const miss = Math.hypot(
    first.x + along * ux - off * uy - (hole?.x ?? 0),
    first.y + along * uy + off * ux - (hole?.y ?? 0),
  );
  const cross = Math.abs((true1 * true1 - along * along) ** 0.5) / true1 || 1;
  // Rounding of each length reaches the place by 1 / sin of the crossing angle.
  expect(miss).toBeLessThanOrEqual((6 * by * Math.max(a, b)) / (base * Math.min(1, cross)) + 10 * by);
}

describe('worked figures', () => {
  it('two depths by hand: the third wheel by a 90:1 table about the centre arbor is 13 turns 2° 40′ 6″', () => {
    const placed = everyConstruction();
    const own = holesOf(placed, 'base');
    const third = own.filter((hole) => hole.id === 'third');
    const { lines } = rotaryList(third, { display: MM, centre: [40, 30], centreSays: 'Centre', ratio: 90 });
    expect(lines[0]).toMatchObject({ turns: 13, degrees: 2, minutes: 40, seconds: 6 });
    expect(lines[0]?.radius).toBeCloseTo(28.8, 9);
    expect(lines[0]?.angleDeg).toBeCloseTo(54.6683, 4);
  });
  it('arithmetic: a seventh of a turn on 90:1 is 12 turns 3° 25′ 42.86″', () => {
    const [hole] = holes;
    if (!hole) throw new Error('fifteen holes');
    const at = (2 * Math.PI) / 7;
    const seventh = [{ ...hole, x: 20 * Math.cos(at), y: 20 * Math.sin(at) }];
    const { lines } = rotaryList(seventh, { display: MM, centre: [0, 0], centreSays: 'C', ratio: 90 });
    expect(lines[0]).toMatchObject({ turns: 12, degrees: 3, minutes: 25, seconds: 43 });
  });
  it('a ratio that no table has is refused', () => {
    expect(() => rotaryList(holes, { display: MM, centre: [0, 0], centreSays: 'C', ratio: 0 })).toThrow(/whole number/);
  });
  it('over pins: outside is distance plus half of both, inside less half', () => {
    const [a, b] = holes;
    if (!a || !b) throw new Error('fifteen holes');
    const line = overPins({ ...a, x: 0, y: 0 }, { ...b, x: 28.8, y: 0 }, [3, 4]);
    expect(line.over).toBeCloseTo(32.3, 12);
    expect(line.inside).toBeCloseTo(25.3, 12);
    expect(overPins({ ...a, x: 0, y: 0 }, { ...b, x: 3, y: 0 }, [3, 4]).inside).toBeUndefined();
  });
});

describe('from the edges', () => {
  const placed = everyConstruction();
  it('distances read back to the places, on both faces', () => {
    for (const face of ['up', 'down'] as const) {
      const view = plateViewOf(placed.movement, 'base', face);
      const own = holesOf(placed, 'base').map((hole) => ({ ...hole, ...view.see(hole) }));
      const list = edgeOffsets(own, view, MM);
      const lines = [...(list?.text ?? '').matchAll(/^(.*): (\S+) from the left edge, (\S+) from the lower edge$/gm)];
      expect(lines).toHaveLength(13);
      lines.forEach(([, , x, y], index) => {
        const left = face === 'up' ? 0 : -100;
        expect(Math.abs(left + Number(x) - (own[index]?.x ?? Number.NaN))).toBeLessThanOrEqual(half(MM));
        expect(Math.abs(Number(y) - (own[index]?.y ?? Number.NaN))).toBeLessThanOrEqual(half(MM));
      });
    }
  });
  it('a round plate has none', () => {
    const round = placedByHand(
      { plates: [{ id: 'p', levels: { from: 0, to: 1 }, outline: { kind: 'circle', centre: [0, 0], radius: 9 } }] },
      {},
    );
    expect(edgeOffsets([], plateViewOf(round.movement, 'p'), MM)).toBeUndefined();
  });
});

describe('laws', () => {
  it('the distance table is symmetric and keeps the triangle rule', () => {
    fc.assert(
      fc.property(
        fc.array(
          fc.tuple(fc.double({ min: -99, max: 99, noNaN: true }), fc.double({ min: -99, max: 99, noNaN: true })),
          { minLength: 3, maxLength: 6 },
        ),
        (points) => {
          const [pattern] = holes;
          if (!pattern) return;
          const table = distanceTable(points.map(([x, y]) => ({ ...pattern, x, y })));
          table.forEach((row, i) => {
            row.forEach((d, j) => {
              expect(d).toBe(table[j]?.[i]);
              for (const [k] of points.entries()) {
                expect(d).toBeLessThanOrEqual((row[k] ?? 0) + (table[k]?.[j] ?? 0) + 1e-9);
              }
            });
          });
        },
      ),
    );
  });
});
