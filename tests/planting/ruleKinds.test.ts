/** Every kind of rule by itself, in a coupled group, left out, and asked of parts that are not there. */
import { describe, expect, it } from 'vitest';
import { plantMovement } from '../../solver/planting/index.ts';
import {
  arbor,
  buildMovement,
  clockWheel,
  distance,
  held,
  largestMiss,
  mark,
  placeOf,
  type RuleInput,
  ruleOf,
} from './buildMovement.ts';

const DEGREES = 180 / Math.PI;
const square = (size: number) => ({
  kind: 'path' as const,
  vertices: [
    { x: 0, y: 0 },
    { x: size, y: 0 },
    { x: size, y: size },
    { x: 0, y: size },
  ],
});
const circle = (radius: number, x = 0, y = 0) => ({
  kind: 'circle' as const,
  centre: [x, y] as [number, number],
  radius,
});
const levels = { from: 0, to: 3 };

/** A and B are held; P is sketched near (20, 10); parts for gaps stand around. */
function alone(rules: readonly RuleInput[], sketch: readonly [number, number] = [20.3, 9.8]) {
  return plantMovement(
    buildMovement({
      arbors: [arbor('A', 0, 0), arbor('B', 40, 0), arbor('P', ...sketch)],
      wheels: [
        clockWheel('WA', 'A', 30, 1),
        clockWheel('WP', 'P', 15, 1),
        { ...clockWheel('ring', 'A', 80, 1, 5), form: 'involute', internal: true, outerDiameter: 90 },
        { ...clockWheel('planet', 'P', 35, 1, 5), form: 'involute' },
      ],
      walls: [
        { id: 'drum', outline: circle(60), inner: circle(50), levels },
        { id: 'pillar', outline: circle(5, 20, 40), levels },
        { id: 'case', outline: square(100), inner: square(90), levels },
        { id: 'block', outline: square(10), levels },
      ],
      plates: [{ id: 'plate', outline: circle(55), levels }],
      openings: [{ id: 'window', plate: 'plate', outline: circle(12, 25, 15) }],
      rules: [held('a', 'A', 0, 0), held('b', 'B', 40, 0), ...rules],
    }),
  );
}

/** The direction of P from A is 30°, so that only the rule under test decides how far. */
const ray: RuleInput = { kind: 'bearing', id: 'ray', point: 'P', centre: 'A', angle: 30 };
const along = (length: number): [number, number] => [length * Math.cos(30 / DEGREES), length * Math.sin(30 / DEGREES)];

interface Single {
  readonly name: string;
  readonly rule: RuleInput;
  readonly at: readonly [number, number];
  readonly sketch?: readonly [number, number];
  readonly length?: number;
}

const R = 'rule';
const singles: readonly Single[] = [
  { name: 'distance', rule: distance(R, 'P', 'A', 22), at: along(22), length: 22 },
  { name: 'radius', rule: { kind: 'radius', id: R, point: 'P', centre: 'A', length: 25 }, at: along(25), length: 25 },
  {
    name: 'depth, calculated: 1 mm module, 30 + 15 teeth',
    rule: { kind: 'depth', id: R, wheels: ['WA', 'WP'] },
    at: along(22.5),
    length: 22.5,
  },
  {
    name: 'depth with the wanted shake',
    rule: { kind: 'depth', id: R, wheels: ['WA', 'WP'], allowance: 0.08 },
    at: along(22.58),
    length: 22.58,
  },
  {
    name: 'depth, measured',
    rule: { kind: 'depth', id: R, wheels: ['WA', 'WP'], use: 'measured', measured: { value: 22.61 }, held: 23 },
    at: along(22.61),
    length: 22.61,
  },
  {
    name: 'depth, held',
    rule: { kind: 'depth', id: R, wheels: ['WA', 'WP'], use: 'held', measured: { value: 22.61 }, held: 23 },
    at: along(23),
    length: 23,
  },
  {
    name: 'depth inside a ring: (80 − 35) / 2',
    rule: { kind: 'depth', id: R, wheels: ['ring', 'planet'] },
    at: along(22.5),
    length: 22.5,
  },
  {
    name: 'bearing from another point',
    rule: { kind: 'bearing', id: R, point: 'P', centre: 'B', reference: 'A', angle: -30 },
    at: [20, 20 * Math.tan(30 / DEGREES)],
  },
  {
    name: 'in line with two others',
    rule: { kind: 'inLine', id: R, point: 'P', through: ['B', 'M'] },
    at: [20 * Math.sqrt(3) * Math.cos(30 / DEGREES), 20 * Math.sqrt(3) * 0.5],
    sketch: [30, 17],
  },
  {
    name: 'same radius as another',
    rule: { kind: 'sameRadius', id: R, points: ['P', 'M'], centre: 'A' },
    at: along(Math.hypot(10, 10 * Math.sqrt(3) * 3)),
    sketch: [45, 26],
  },
  {
    name: 'clear of an arbor (radius 1 each)',
    rule: { kind: 'clearBy', id: R, parts: ['A', 'P'], gap: 20 },
    at: along(22),
    length: 22,
  },
  {
    name: 'clear inside the drum',
    rule: { kind: 'clearBy', id: R, parts: ['P', 'drum'], gap: 4 },
    at: along(45),
    sketch: [40, 22],
    length: 45,
  },
  {
    name: 'clear outside the drum',
    rule: { kind: 'clearBy', id: R, parts: ['drum', 'P'], gap: 4 },
    at: along(65),
    sketch: [60, 35],
    length: 65,
  },
  {
    name: 'clear inside the edge of the plate',
    rule: { kind: 'clearBy', id: R, parts: ['P', 'plate'], gap: 4 },
    at: along(50),
    sketch: [44, 24],
    length: 50,
  },
  {
    name: 'clear of the second side of a case, from inside',
    rule: { kind: 'clearBy', id: R, parts: ['P', 'case'], gap: 3, edge: 1 },
    at: [86, 86 * Math.tan(30 / DEGREES)],
    sketch: [80, 50],
    length: 4,
  },
  {
    name: 'clear of the second side of a block, from outside',
    rule: { kind: 'clearBy', id: R, parts: ['block', 'P'], gap: 3, edge: 1 },
    at: [14, 14 * Math.tan(30 / DEGREES)],
    sketch: [15, 8],
    length: 4,
  },
  {
    name: 'clear of the nearest side where none is named',
    rule: { kind: 'clearBy', id: R, parts: ['block', 'P'], gap: 3 },
    at: [14, 14 * Math.tan(30 / DEGREES)],
    sketch: [15, 8],
    length: 4,
  },
];

describe('each kind of rule, with a bearing of 30°', () => {
  for (const { name, rule, at, sketch, length } of singles) {
    it(name, () => {
      const needsM = JSON.stringify(rule).includes('"M"');
      const placed = needsM ? withMark(rule, sketch) : alone([ray, rule], sketch);
      const place = placeOf(placed, 'P');
      expect(placed.disagreements).toEqual([]);
      expect(place.state).toBe('planted');
      expect(place.x).toBeCloseTo(at[0], 9);
      expect(place.y).toBeCloseTo(at[1], 9);
      expect(new Set(place.placedBy)).toEqual(new Set(['ray', R]));
      expect(largestMiss(placed)).toBeLessThan(1e-9);
      if (length !== undefined) expect(ruleOf(placed, R)?.length).toBeCloseTo(length, 9);
    });
  }

  it('an arc of an edge is kept clear of from its own side, hollow or bulging', () => {
    // A slot: a half circle of radius 30 about (0, 0) bulging to the right, and one cut into it from the left.
    const vertices = [
      { x: -60, y: -30 },
      { x: 0, y: -30, bulge: 1 },
      { x: 0, y: 30 },
      { x: -60, y: 30, bulge: -1 },
    ];
    const planted = (edge: number, x: number, y: number) =>
      placeOf(
        plantMovement(
          buildMovement({
            arbors: [arbor('A', 0, 0), arbor('P', x, y)],
            walls: [{ id: 'slot', outline: { kind: 'path', vertices }, levels }],
            rules: [
              held('a', 'A', 0, 0),
              { kind: 'bearing', id: 'b', point: 'P', centre: 'A', angle: x > 0 ? 0 : 180 },
              { kind: 'clearBy', id: 'c', parts: ['P', 'slot'], gap: 4, edge },
            ],
          }),
        ),
        'P',
      );
    expect(planted(1, 40, 1).x).toBeCloseTo(35, 9); // outside the bulge: 30 + 4 + 1
    expect(planted(3, -50, 1).x).toBeCloseTo(-35, 9); // in the hollow about (−60, 0): 30 − 4 − 1 from it
  });

  it('a wheel keeps its tips clear of a post', () => {
    const tip = (15 + 2.76) / 2; // addendum of a clock wheel, 1.38 × module: practice 6.1
    const placed = plantMovement(
      buildMovement({
        arbors: [arbor('A', 0, 0), arbor('P', 20, 10)],
        posts: [{ id: 'Q', at: [60, 0], diameter: 8 }],
        wheels: [{ ...clockWheel('W', 'P', 15, 1), tipDiameter: 2 * tip }],
        rules: [
          held('a', 'A', 0, 0),
          held('q', 'Q', 60, 0),
          distance('d', 'A', 'P', 50),
          { kind: 'clearBy', id: 'c', parts: ['W', 'Q'], gap: 0.5 },
        ],
      }),
    );
    const place = placeOf(placed, 'P');
    expect(Math.hypot(place.x - 60, place.y) - tip - 4).toBeCloseTo(0.5, 9);
    expect(place.y).toBeGreaterThan(0);
  });

  it('held puts a point at its coordinates, opposite and even spacing follow it exactly', () => {
    const placed = plantMovement(
      buildMovement({
        arbors: ['A', 'P', 'Q', 'R', 'S'].map((id) => arbor(id, 1, 2)),
        rules: [
          held('a', 'A', 3, 4),
          held('p', 'P', 13, 4),
          { kind: 'evenSpacing', id: 'even', points: ['P', 'Q', 'R', 'S'], centre: 'A' },
        ],
      }),
    );
    expect(placeOf(placed, 'Q').x).toBeCloseTo(3, 12);
    expect(placeOf(placed, 'Q').y).toBeCloseTo(14, 12);
    // Half a turn is exact.
    expect([placeOf(placed, 'R').x, placeOf(placed, 'R').y]).toEqual([-7, 4]);
    expect(placeOf(placed, 'S').y).toBeCloseTo(-6, 12);
    expect(placed.says).toBe('5 planted.');
  });

  it('pipes, and what rides on pipes, stand where their arbor stands', () => {
    const placed = plantMovement(
      buildMovement({
        arbors: [
          { ...arbor('outer', 9, 9), ridesOn: 'inner' },
          { ...arbor('inner', 5, 5), ridesOn: 'A' },
          arbor('A', 1, 1),
        ],
        rules: [held('a', 'A', 1.25, 2.5)],
      }),
    );
    for (const id of ['A', 'inner', 'outer'])
      expect(placeOf(placed, id)).toMatchObject({ x: 1.25, y: 2.5, state: 'planted' });
    expect(new Set(placeOf(placed, 'A').hangsOn)).toEqual(new Set(['inner']));
  });

  it('a post that may slide keeps its radius, and moves along its circle only', () => {
    const build = (rules: readonly RuleInput[]) =>
      plantMovement(
        buildMovement({
          arbors: [arbor('A', 0, 0)],
          posts: [{ id: 'P', at: [30, 40], diameter: 6, slidesAbout: 'A' }],
          rules: [held('a', 'A', 0, 0), ...rules],
        }),
      );
    const free = build([]);
    const place = placeOf(free, 'P');
    expect(place).toMatchObject({ state: 'loose', x: 30, y: 40 });
    expect(free.freeMotions).toBe(1);
    expect(Math.abs((place.free[0]?.x ?? 0) * 0.6 + (place.free[0]?.y ?? 0) * 0.8)).toBeLessThan(1e-9);
    const ruled = build([{ kind: 'radius', id: 'r', point: 'P', centre: 'A', length: 45 }]);
    expect(Math.hypot(placeOf(ruled, 'P').x, placeOf(ruled, 'P').y)).toBeCloseTo(45, 9);
    const settled = build([{ kind: 'bearing', id: 'b', point: 'P', centre: 'A', angle: 90 }]);
    expect(placeOf(settled, 'P').state).toBe('planted');
    expect(placeOf(settled, 'P').y).toBeCloseTo(50, 9);
  });

  it('a rule that is left out asks nothing and still shows its distances', () => {
    const placed = alone([ray, { kind: 'depth', id: R, wheels: ['WA', 'WP'], leaveOut: true, held: 24 }]);
    expect(placed.freeMotions).toBe(1);
    expect(ruleOf(placed, R)).toMatchObject({ role: 'leftOut', missBy: 0, held: 24 });
    expect(ruleOf(placed, R)?.calculated).toBeCloseTo(22.5, 9);
  });

  it('a recorded side decides the crossing against the sketch', () => {
    const build = (side: 'left' | 'right') =>
      plantMovement(
        buildMovement({
          arbors: [
            arbor('A', 0, 0),
            arbor('B', 40, 0),
            { ...arbor('P', 20, 10), crossing: { from: 'A', to: 'B', side } },
          ],
          rules: [
            held('a', 'A', 0, 0),
            held('b', 'B', 40, 0),
            distance('1', 'A', 'P', 25),
            distance('2', 'B', 'P', 25),
          ],
        }),
      );
    expect(placeOf(build('left'), 'P').y).toBeCloseTo(15, 9);
    expect(placeOf(build('right'), 'P').y).toBeCloseTo(-15, 9);
  });
});

function withMark(rule: RuleInput, sketch: readonly [number, number] = [20, 10]) {
  return plantMovement(
    buildMovement({
      arbors: [arbor('A', 0, 0), arbor('B', 40, 0), arbor('P', ...sketch)],
      marks: [mark('M', 10, 10 * Math.sqrt(3) * 3)],
      rules: [held('a', 'A', 0, 0), held('b', 'B', 40, 0), held('m', 'M', 10, 10 * Math.sqrt(3) * 3), ray, rule],
    }),
  );
}

describe('each kind in a coupled group', () => {
  // P and Q cannot be built one after the other: each has one rule to the ground and two that join them.
  const known: Readonly<Record<'A' | 'B' | 'C' | 'P' | 'Q' | 'S', readonly [number, number]>> = {
    A: [0, 0],
    B: [60, 5],
    C: [-10, 40],
    P: [21, 13],
    Q: [38, 27],
    S: [4, -1],
  };
  const apart = (a: keyof typeof known, b: keyof typeof known) =>
    Math.hypot(known[a][0] - known[b][0], known[a][1] - known[b][1]);
  const angle = (a: keyof typeof known, b: keyof typeof known) =>
    Math.atan2(known[b][1] - known[a][1], known[b][0] - known[a][0]) * DEGREES;
  const lineThroughP = [known.P[0] + 30, known.P[1] - 44] as const;

  const grounded: Record<string, RuleInput> = {
    distance: distance('k', 'A', 'P', apart('A', 'P')),
    radius: { kind: 'radius', id: 'k', point: 'P', centre: 'C', length: apart('C', 'P') },
    depth: { kind: 'depth', id: 'k', wheels: ['WA', 'WP'], use: 'held', held: apart('A', 'P') },
    bearing: { kind: 'bearing', id: 'k', point: 'P', centre: 'A', angle: angle('A', 'P') },
    'bearing from a point': {
      kind: 'bearing',
      id: 'k',
      point: 'P',
      centre: 'A',
      reference: 'C',
      angle: angle('A', 'P') - angle('A', 'C'),
    },
    'in line': { kind: 'inLine', id: 'k', point: 'P', through: ['D', 'E'] },
    'same radius': { kind: 'sameRadius', id: 'k', points: ['P', 'F'], centre: 'A' },
    'clear by': { kind: 'clearBy', id: 'k', parts: ['A', 'P'], gap: apart('A', 'P') - 2 },
  };

  const movementWith = (rules: readonly RuleInput[]) =>
    buildMovement({
      arbors: [
        ...(['A', 'B', 'C'] as const).map((id) => arbor(id, ...known[id])),
        ...(['P', 'Q', 'S'] as const).map((id, k) => arbor(id, known[id][0] + 0.8 - k, known[id][1] - 0.7 + k)),
      ],
      marks: [
        mark('D', ...lineThroughP),
        mark('E', 2 * known.P[0] - lineThroughP[0], 2 * known.P[1] - lineThroughP[1]),
        mark('F', 0, apart('A', 'P')),
      ],
      wheels: [clockWheel('WA', 'A', 30, 1), clockWheel('WP', 'P', 15, 1)],
      rules: [
        ...(['A', 'B', 'C'] as const).map((id) => held(`h${id}`, id, ...known[id])),
        held('hD', 'D', ...lineThroughP),
        held('hE', 'E', 2 * known.P[0] - lineThroughP[0], 2 * known.P[1] - lineThroughP[1]),
        held('hF', 'F', 0, apart('A', 'P')),
        ...rules,
      ],
    });

  for (const [name, rule] of Object.entries(grounded)) {
    it(name, () => {
      const placed = plantMovement(
        movementWith([
          held('hS', 'S', ...known.S),
          rule,
          distance('pq', 'P', 'Q', apart('P', 'Q')),
          { kind: 'bearing', id: 'dir', point: 'Q', centre: 'P', angle: angle('P', 'Q') },
          distance('qb', 'Q', 'B', apart('Q', 'B')),
        ]),
      );
      for (const id of ['P', 'Q'] as const) {
        expect(placeOf(placed, id).state).toBe('planted');
        expect(placeOf(placed, id).x).toBeCloseTo(known[id][0], 8);
        expect(placeOf(placed, id).y).toBeCloseTo(known[id][1], 8);
      }
      expect(placeOf(placed, 'P').placedBy).toContain('k');
      expect(largestMiss(placed)).toBeLessThan(1e-9);
    });
  }

  it('opposite, and the points it joins', () => {
    // S is Q's image through P; the ground reaches S, P and Q once or twice, never enough for one alone.
    const placed = plantMovement(
      movementWith([
        { kind: 'opposite', id: 'k', point: 'S', centre: 'P', of: 'Q' },
        distance('sa', 'S', 'C', apart('S', 'C')),
        distance('pa', 'P', 'A', apart('P', 'A')),
        distance('qb', 'Q', 'B', apart('Q', 'B')),
        distance('pq', 'P', 'Q', apart('P', 'Q')),
      ]),
    );
    for (const id of ['P', 'Q', 'S'] as const) {
      expect(placeOf(placed, id).state).toBe('planted');
      expect(placeOf(placed, id).x).toBeCloseTo(known[id][0], 8);
      expect(placeOf(placed, id).y).toBeCloseTo(known[id][1], 8);
    }
  });
});

describe('rules that cannot be asked', () => {
  it('are told and not lost, and the rest is planted', () => {
    const rules: readonly RuleInput[] = [
      distance('missing', 'A', 'nowhere', 10),
      { kind: 'depth', id: 'noWheel', wheels: ['WA', 'WX'] },
      { kind: 'depth', id: 'oneAxis', wheels: ['WA', 'ring'] },
      { kind: 'bearing', id: 'self', point: 'P', centre: 'P', angle: 10 },
      { kind: 'clearBy', id: 'walls', parts: ['drum', 'case'], gap: 1 },
      { kind: 'clearBy', id: 'noEdge', parts: ['P', 'case'], gap: 1, edge: 9 },
      { kind: 'clearBy', id: 'noPart', parts: ['WA', 'ghost'], gap: 1 },
      held('heldNowhere', 'ghost', 1, 2),
      { kind: 'evenSpacing', id: 'twice', points: ['P', 'B', 'P'], centre: 'A' },
    ];
    const placed = alone([ray, distance('d', 'A', 'P', 22), ...rules]);
    expect(placeOf(placed, 'P').state).toBe('planted');
    const told = new Set(placed.disagreements.flatMap((each) => each.rules));
    for (const { id } of rules) {
      expect(ruleOf(placed, id)?.role).toBe('disagrees');
      expect(told).toContain(id);
    }
    for (const { says } of placed.disagreements) expect(says).not.toMatch(/undefined|NaN/);
  });

  it('say how much room is missing inside a ring', () => {
    const placed = plantMovement(
      buildMovement({
        arbors: [arbor('A', 0, 0)],
        walls: [{ id: 'drum', outline: circle(30), inner: circle(20), levels }],
        wheels: [{ ...clockWheel('W', 'A', 30, 1), tipDiameter: 36 }],
        rules: [held('a', 'A', 0, 0), { kind: 'clearBy', id: 'c', parts: ['W', 'drum'], gap: 3 }],
      }),
    );
    expect(placed.disagreements).toHaveLength(1);
    expect(placed.disagreements[0]?.gap).toBeCloseTo(1, 12);
    expect(placed.disagreements[0]?.says).toContain('at most 2.000 mm');
  });
});
