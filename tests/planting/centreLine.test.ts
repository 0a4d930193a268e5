/** Rules told from the centre line: where they put points, and that moving, turning, mirroring and scaling take all along. */

import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { applyEdit, readMovement } from '../../solver/movement/index.ts';
import type { Movement } from '../../solver/movement/schema.ts';
import { plantMovement, ruleValueNow } from '../../solver/planting/index.ts';
import type { PlacedMovement } from '../../solver/planting/placed.ts';
import {
  arbor,
  buildMovement,
  distance,
  held,
  largestMiss,
  placeOf,
  pointId,
  type RuleInput,
} from './buildMovement.ts';

type XY = readonly [number, number];
/** A line as the document states it. */
interface Line {
  readonly through: XY;
  readonly angle: number;
}

const RADIANS = Math.PI / 180;
const up = ({ angle }: Line): XY => [Math.cos(angle * RADIANS), Math.sin(angle * RADIANS)];

function image(line: Line, [x, y]: XY): XY {
  const [ux, uy] = up(line);
  const [dx, dy] = [x - line.through[0], y - line.through[1]];
  const along = dx * ux + dy * uy;
  const [px, py] = [line.through[0] + along * ux, line.through[1] + along * uy];
  return [2 * px - x, 2 * py - y];
}

const withLine = (parts: Parameters<typeof buildMovement>[0], line: Line | undefined): Movement => ({
  ...buildMovement(parts),
  ...(line && { centreLine: line }),
});

function expectAt(placed: PlacedMovement, id: string, at: XY, digits = 9): void {
  const place = placeOf(placed, id);
  expect(place.state, id).toBe('planted');
  expect(place.x, `${id} x`).toBeCloseTo(at[0], digits);
  expect(place.y, `${id} y`).toBeCloseTo(at[1], digits);
}

describe('the centre line where none is stated', () => {
  const q: XY = [12, 7];
  const base = (rules: readonly RuleInput[], sketch: XY) =>
    plantMovement(
      buildMovement({ arbors: [arbor('Q', ...q), arbor('P', ...sketch)], rules: [held('q', 'Q', ...q), ...rules] }),
    );

  it('is upright through the origin: the image has the other sign, to the last bit', () => {
    const placed = base([{ kind: 'mirrored', id: 'm', point: 'P', of: 'Q' }], [-11, 7.4]);
    expect(placeOf(placed, 'P')).toMatchObject({ x: -12, y: 7, state: 'planted' });
    expect(placed.disagreements).toEqual([]);
  });

  it('straight above and a distance; on it and at the same height', () => {
    const above = base(
      [{ kind: 'straightAbove', id: 'r', point: 'P', of: 'Q' }, distance('d', 'P', 'Q', 25)],
      [13, 30],
    );
    expectAt(above, 'P', [12, 32]);
    expect(new Set(placeOf(above, 'P').placedBy)).toEqual(new Set(['r', 'd']));
    const level = base(
      [
        { kind: 'sameHeight', id: 'r', point: 'P', of: 'Q' },
        { kind: 'onCentreLine', id: 'c', point: 'P' },
      ],
      [1, 6],
    );
    expectAt(level, 'P', [0, 7]);
  });

  it('the sketch says whether it stands above or below', () => {
    const below = base(
      [{ kind: 'straightAbove', id: 'r', point: 'P', of: 'Q' }, distance('d', 'P', 'Q', 25)],
      [12, -20],
    );
    expectAt(below, 'P', [12, -18]);
  });

  it('places the other point where the first is known', () => {
    const placed = plantMovement(
      buildMovement({
        arbors: [arbor('P', -12, 7), arbor('Q', 11, 8), arbor('R', 0, 30)],
        rules: [
          held('p', 'P', -12, 7),
          { kind: 'mirrored', id: 'm', point: 'P', of: 'Q' },
          { kind: 'sameHeight', id: 'h', point: 'Q', of: 'R' },
          { kind: 'onCentreLine', id: 'c', point: 'R' },
        ],
      }),
    );
    expectAt(placed, 'Q', [12, 7]);
    expectAt(placed, 'R', [0, 7]);
  });
});

describe('what has no meaning is told', () => {
  it('an image of a point on the line would be the point itself', () => {
    const placed = plantMovement(
      buildMovement({
        arbors: [arbor('Q', 0, 9), arbor('P', 1, 9)],
        rules: [held('q', 'Q', 0, 9), { kind: 'mirrored', id: 'm', point: 'P', of: 'Q' }],
      }),
    );
    expect(placed.disagreements.map(({ rules }) => rules)).toEqual([['m']]);
    expect(placeOf(placed, 'P').state).toBe('contested');
  });

  it('straight above and level with one point is that point', () => {
    const placed = plantMovement(
      buildMovement({
        arbors: [arbor('Q', 3, 9), arbor('P', 4, 12)],
        rules: [
          held('q', 'Q', 3, 9),
          { kind: 'straightAbove', id: 'a', point: 'P', of: 'Q' },
          { kind: 'sameHeight', id: 'h', point: 'P', of: 'Q' },
        ],
      }),
    );
    expect(placeOf(placed, 'P').state).toBe('contested');
    expect(new Set(placed.disagreements.flatMap(({ rules }) => rules))).toEqual(new Set(['a', 'h']));
  });

  it('two lines straight above are one direction: the second checks', () => {
    const placed = plantMovement(
      buildMovement({
        arbors: [arbor('A', 0, 0), arbor('B', 3, 0), arbor('P', 1, 20)],
        rules: [
          held('a', 'A', 0, 0),
          held('b', 'B', 3, 0),
          { kind: 'straightAbove', id: 'first', point: 'P', of: 'A' },
          { kind: 'straightAbove', id: 'second', point: 'P', of: 'B' },
          distance('d', 'P', 'A', 20),
        ],
      }),
    );
    expectAt(placed, 'P', [0, 20]);
    expect(placed.disagreements).toMatchObject([{ gap: 3, cause: { kind: 'over', check: 'second' } }]);
  });

  it('a rule that names one point twice is refused where it stands', () => {
    const text = JSON.stringify({
      format: 'depthwright-movement',
      version: 2,
      arbors: [arbor('P', 1, 1)],
      rules: [{ kind: 'mirrored', id: 'm', point: 'P', of: 'P' }],
    });
    const reading = readMovement(text);
    expect(reading.kind).toBe('problems');
    if (reading.kind === 'problems') expect(reading.problems.map(({ path }) => path)).toContain('rules[0].of');
  });
});

describe('a drilled place', () => {
  const rules: RuleInput[] = [held('q', 'Q', 12, 7), { kind: 'mirrored', id: 'm', point: 'P', of: 'Q' }];
  const planted = (point: string, at: XY) =>
    plantMovement(
      buildMovement({
        arbors: [arbor('Q', 12, 7), arbor('P', -12, 7)],
        rules,
        made: [{ point, state: 'drilled', at: [...at] }],
      }),
    );

  it('is no part of the pattern: the image stays where it was drawn, whichever of the two was drilled', () => {
    expectAt(planted('Q', [12.04, 7]), 'P', [-12, 7]);
    const drilled = planted('P', [-12.04, 7.01]);
    expectAt(drilled, 'P', [-12.04, 7.01]);
    expectAt(drilled, 'Q', [12, 7]);
  });
});

describe('moved, turned, mirrored, scaled', () => {
  /** A moved copy of the plane: a similarity, or one followed by a mirror in the x axis. */
  const motion = fc.record({
    angle: fc.double({ min: -180, max: 180, noNaN: true }),
    size: fc.double({ min: -1, max: 1, noNaN: true }).map((power) => 10 ** power),
    by: fc.tuple(fc.double({ min: -500, max: 500, noNaN: true }), fc.double({ min: -500, max: 500, noNaN: true })),
    isMirrored: fc.boolean(),
  });
  type Motion = typeof motion extends fc.Arbitrary<infer M> ? M : never;
  const moved =
    ({ angle, size, by, isMirrored }: Motion) =>
    ([x, y]: XY): XY => {
      const [c, s] = [Math.cos(angle * RADIANS), Math.sin(angle * RADIANS)];
      const flipped = isMirrored ? -y : y;
      return [by[0] + size * (c * x - s * flipped), by[1] + size * (s * x + c * flipped)];
    };

  /** Q held, P its image, R level with Q on the line, S above P: all four kinds. */
  const scene = (line: Line, q: XY, place: (at: XY) => XY, size: number): Movement => {
    const p = image(line, q);
    const [ux, uy] = up(line);
    const s: XY = [p[0] + 20 * ux, p[1] + 20 * uy];
    const r: XY = [(p[0] + q[0]) / 2, (p[1] + q[1]) / 2];
    const near = ([x, y]: XY): XY => [x + 0.3, y - 0.2];
    const [through, ahead] = [place(line.through), place([line.through[0] + ux, line.through[1] + uy])];
    const angle = Math.atan2(ahead[1] - through[1], ahead[0] - through[0]) / RADIANS;
    return withLine(
      {
        arbors: [
          arbor('Q', ...place(q)),
          arbor('P', ...place(near(p))),
          arbor('R', ...place(near(r))),
          arbor('S', ...place(near(s))),
        ],
        rules: [
          held('q', 'Q', ...place(q)),
          { kind: 'mirrored', id: 'm', point: 'P', of: 'Q' },
          { kind: 'onCentreLine', id: 'c', point: 'R' },
          { kind: 'sameHeight', id: 'h', point: 'R', of: 'Q' },
          { kind: 'straightAbove', id: 'a', point: 'S', of: 'P' },
          distance('d', 'S', 'P', 20 * size),
        ],
      },
      { through, angle },
    );
  };

  it('every place goes along, whichever way the line lies', () => {
    fc.assert(
      fc.property(
        motion,
        fc.double({ min: 0, max: 360, noNaN: true }),
        fc.tuple(fc.double({ min: 5, max: 90, noNaN: true }), fc.double({ min: -60, max: 60, noNaN: true })),
        (how, angle, [across, along]) => {
          const line: Line = { through: [3, -8], angle };
          const [ux, uy] = up(line);
          const q: XY = [3 + along * ux + across * uy, -8 + along * uy - across * ux];
          const still = plantMovement(scene(line, q, (at) => at, 1));
          const gone = plantMovement(scene(line, q, moved(how), how.size));
          expect(still.disagreements).toEqual([]);
          expect(largestMiss(still)).toBeLessThan(1e-9);
          expectAt(still, 'P', image(line, q), 8);
          for (const { id, x, y } of still.places.values()) expectAt(gone, id, moved(how)([x, y]), 7);
        },
      ),
      { numRuns: 150 },
    );
  });

  it('the order of the rules does not matter: a tie stands before all that is none', () => {
    const line: Line = { through: [3, -8], angle: 70 };
    const movement = scene(line, [40, 11], (at) => at, 1);
    const turned = { ...movement, rules: [...movement.rules].reverse() };
    const [a, b] = [plantMovement(movement), plantMovement(turned)];
    for (const { id, x, y } of a.places.values()) expectAt(b, id, [x, y]);
  });
});

describe('coupled with others', () => {
  it('two unknown points that mirror each other are solved together', () => {
    // P and Q mirror each other, 30 apart; P stands 25 from A, which is on the line.
    const placed = plantMovement(
      buildMovement({
        arbors: [arbor('A', 0, 0), arbor('P', -14, 21), arbor('Q', 16, 19)],
        rules: [
          held('a', 'A', 0, 0),
          { kind: 'mirrored', id: 'm', point: 'P', of: 'Q' },
          distance('apart', 'P', 'Q', 30),
          distance('from', 'P', 'A', 25),
        ],
      }),
    );
    expect(placed.disagreements).toEqual([]);
    expectAt(placed, 'P', [-15, 20], 8);
    expectAt(placed, 'Q', [15, 20], 8);
  });

  it('an image of an opposite: derived places carry the line back to their root', () => {
    const placed = plantMovement(
      buildMovement({
        arbors: [arbor('C', 0, 0), arbor('Q', 21, 9), arbor('O', -20, -10), arbor('P', 20, -10)],
        rules: [
          held('c', 'C', 5, 0),
          { kind: 'opposite', id: 'o', point: 'O', centre: 'C', of: 'Q' },
          held('p', 'P', 10, -10),
          { kind: 'mirrored', id: 'm', point: 'P', of: 'O' },
        ],
      }),
    );
    expectAt(placed, 'O', [-10, -10]);
    expectAt(placed, 'Q', [20, 10]);
  });
});

describe('± and what is told', () => {
  it('the ± of a mirror image is that of the other and its own', () => {
    const placed = plantMovement(
      buildMovement({
        arbors: [arbor('Q', 12, 7), arbor('P', -12, 7)],
        rules: [
          { ...held('q', 'Q', 12, 7), plusMinus: 0.03 },
          { kind: 'mirrored', id: 'm', point: 'P', of: 'Q', plusMinus: 0.04 },
        ],
      }),
    );
    expect(2 * (placeOf(placed, 'P').spread?.major ?? 0)).toBeCloseTo(0.05, 9);
  });

  it('each rule measures how far it is from holding', () => {
    const line: Line = { through: [0, 5], angle: 0 };
    const movement = withLine(
      { arbors: [arbor('P', 4, 9), arbor('Q', 1, 2)], rules: [held('p', 'P', 4, 9), held('q', 'Q', 1, 2)] },
      line,
    );
    const placed = plantMovement(movement);
    const [P, Q] = [pointId('P'), pointId('Q')];
    const off = (rule: Parameters<typeof ruleValueNow>[2]) => ruleValueNow(movement, placed, rule)?.value;
    expect(off({ kind: 'mirrored', point: P, of: Q })).toBeCloseTo(Math.hypot(3, 1), 12);
    expect(off({ kind: 'straightAbove', point: P, of: Q })).toBeCloseTo(7, 12);
    expect(off({ kind: 'sameHeight', point: P, of: Q })).toBeCloseTo(3, 12);
    expect(off({ kind: 'onCentreLine', point: P })).toBeCloseTo(4, 12);
  });

  it('the line is stated and left out by the edit that describes the movement', () => {
    const movement = buildMovement({ arbors: [arbor('P', 4, 9)] });
    const stated = applyEdit(movement, { kind: 'describe', set: { centreLine: { angle: 80 } } });
    if (stated.kind === 'refused') throw new Error('refused');
    expect(stated.movement.centreLine).toEqual({ through: [0, 0], angle: 80 });
    const gone = applyEdit(stated.movement, { kind: 'describe', unset: ['centreLine'] });
    expect(gone.kind === 'refused' ? undefined : gone.movement).toEqual(movement);
  });
});
