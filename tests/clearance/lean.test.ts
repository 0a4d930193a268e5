/** The one lean of an arbor, against worked numbers with their formulas. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { depthsUnderShake } from '../../solver/clearance/depths/depthsUnderShake.ts';
import { asTheyMeet } from '../../solver/clearance/gaps/gapChecker.ts';
import { gapContextOf, gapOfPair } from '../../solver/clearance/gaps/gapReadings.ts';
import { planGapOf } from '../../solver/clearance/gaps/planGap.ts';
import { checkMovement, remediesFor, shakeOf } from '../../solver/clearance/index.ts';
import { steepest } from '../../solver/clearance/shake/lean.ts';
import { solidsOf } from '../../solver/clearance/solids/solids.ts';
import type { ArborId } from '../../solver/movement/ids.ts';
import type { Movement } from '../../solver/movement/schema.ts';
import { plantMovement } from '../../solver/planting/index.ts';
import { arborAt, sceneOf, wheelOf } from './scenes.ts';
import { wordsOf } from './wordsOf.ts';

const A = 'A' as ArborId; // ids of the scenes
const B = 'B' as ArborId;
const disc = { kind: 'circle', centre: [0, 0], radius: 90 };
const plates = [
  { id: 'back', outline: disc, levels: { from: -3, to: 0 } },
  { id: 'front', outline: disc, levels: { from: 42, to: 45 } },
];
const bearings = (play: number) => ['back', 'front'].map((plate) => ({ plate, bore: 2 + play, pivot: 2, length: 3 }));
const degrees = (slope: number): number => (Math.atan(slope) * 180) / Math.PI;

/** The height gap with shake of the wheels `a` and `b`. */
function heightWithShake(movement: Movement): number {
  const placed = plantMovement(movement);
  const solids = solidsOf(placed);
  const [first, second] = ['a', 'b'].map((id) => solids.find(({ part, piece }) => part === id && piece === 'whole'));
  if (!first || !second) throw new Error('both wheels have a body');
  const [x, y] = asTheyMeet(first, second);
  const plan = planGapOf(x, y);
  if (!plan) throw new Error('both are round');
  return gapOfPair(x, y, plan, { plan: 0.5, height: 0.3 }, gapContextOf(placed, solids)).withShake.gap;
}

describe('holes that are not opposite each other', () => {
  const scene = (more: object = {}) => {
    const a = arborAt('A', 0, 0, { bearings: bearings(0), ...more });
    return sceneOf({
      plates,
      arbors: [a.arbor],
      wheels: [wheelOf('w', 'A', 53.4, 32)],
      made: [
        { point: 'A', plate: 'back', state: 'drilled', at: [0, 0] },
        { point: 'A', plate: 'front', state: 'drilled', at: [0.25, 0] },
      ],
    });
  };

  it('two plates 42 apart, the front hole 0.25 off: the axis 0.196 aside at 33, a lean of 0.341°, a rim of 26.7 0.159 higher', () => {
    const shake = shakeOf(scene());
    // By the lever: 0.25 · 33/42; atan(0.25/42); 26.7 · 0.25/42.
    expect(shake.standsOff(A, 33).x).toBeCloseTo((0.25 * 33) / 42, 12);
    expect(shake.standsOff(A, 33).x).toBeCloseTo(0.196, 3);
    expect(shake.aside(A, 33)).toBeCloseTo(0.196, 3);
    expect(degrees(shake.tilt(A))).toBeCloseTo(0.341, 3);
    expect(26.7 * shake.tilt(A)).toBeCloseTo(0.159, 3);
  });

  it('plays of the holes add to it', () => {
    const shake = shakeOf(scene({ bearings: bearings(0.1) }));
    // Each pivot 0.05 aside at both ends of its length: the steepest line between the two inner faces.
    expect(shake.tilt(A)).toBeCloseTo(0.25 / 42 + 0.1 / 48, 12);
  });

  it('a depth stands where its arbor leans to', () => {
    const b = arborAt('B', 30, 0, { bearings: bearings(0) });
    const movement = {
      ...scene(),
      ...sceneOf({
        plates,
        arbors: [...scene().arbors, b.arbor],
        wheels: [wheelOf('w', 'A', 42, 32, 2), wheelOf('v', 'B', 22, 32, 2)],
        rules: [b.rule, { id: 'd', kind: 'depth', wheels: ['w', 'v'] }],
        made: scene().made,
      }),
    };
    const [depth] = depthsUnderShake(plantMovement(movement));
    expect(depth?.distance).toBeCloseTo(30 - (0.25 * 33) / 42, 9);
  });
});

describe('a hole drilled out of square', () => {
  it('1° over 40 leans a stud by 0.70', () => {
    const a = arborAt('A', 0, 0, { bearings: [{ plate: 'back', bore: 3, pivot: 3, length: 3 }] });
    const made = [
      { point: 'A', plate: 'back', state: 'drilled', at: [0, 0], outOfSquare: { angle: 1, direction: 90 } },
    ];
    const shake = shakeOf(sceneOf({ plates, arbors: [a.arbor], made }));
    const middle = -1.5;
    expect(shake.standsOff(A, middle + 40).y).toBeCloseTo(40 * Math.tan(Math.PI / 180), 9);
    expect(shake.standsOff(A, middle + 40).y).toBeCloseTo(0.698, 3);
    expect(shake.standsOff(A, middle + 40).x).toBeCloseTo(0, 12);
  });
});

describe('play of bearings', () => {
  it('the steepest stick is the one that no bound stops, against every slope of a fine grid', () => {
    const bound = fc.record({
      z: fc.integer({ min: 0, max: 600 }).map((n) => n / 10),
      play: fc.integer({ min: 1, max: 50 }).map((n) => n / 1000),
    });
    fc.assert(
      fc.property(fc.uniqueArray(bound, { minLength: 2, maxLength: 6, selector: (b) => b.z }), (bounds) => {
        const s = steepest(bounds);
        const passes = (slope: number): boolean =>
          Math.max(...bounds.map(({ z, play }) => -play - slope * z)) <=
          Math.min(...bounds.map(({ z, play }) => play - slope * z));
        expect(passes(s * (1 - 1e-9))).toBe(true);
        expect(passes(s * (1 + 1e-6))).toBe(false);
      }),
    );
  });

  it('a rim of radius 30 on a short loose stud sinks by tenths, and is told so', () => {
    // Ø 2.04 on Ø 2 over 3: a slope of 0.04/3; a rim of 30 sinks 0.4, from a gap of 0.6.
    const a = arborAt('A', 0, 0, { bearings: [{ plate: 'back', bore: 2.04, pivot: 2, length: 3 }] });
    const b = arborAt('B', 25, 0, { bearings: bearings(0) });
    const movement = sceneOf({
      plates,
      arbors: [a.arbor, b.arbor],
      rules: [a.rule, b.rule],
      wheels: [wheelOf('a', 'A', 60, 10), wheelOf('b', 'B', 60, 12.6)],
    });
    expect(heightWithShake(movement)).toBeCloseTo(0.6 - (30 * 0.04) / 3, 9);
    const placed = plantMovement(movement);
    const found = checkMovement(placed).filter(({ kind }) => kind === 'tooClose');
    expect(found).toMatchObject([{ parts: ['a', 'b'], value: 'withShake', gap: expect.closeTo(0.2, 9) }]);
    // 0.3 are owed: 30 · 0.04/L may be 0.3, so a collar of 4 or more holds.
    const cures = found.flatMap((finding) => remediesFor(placed, finding)).map(wordsOf(movement).cure);
    expect(cures).toContainEqual(expect.stringMatching(/^Give A \(A\) a collar 4\.500 mm long to run in/));
    expect(cures).not.toContainEqual(expect.stringMatching(/a collar 3\.750 mm long/));
  });

  it('wobble of a wheel takes half of itself from a gap in height', () => {
    const [a, b] = [arborAt('A', 0, 0), arborAt('B', 25, 0)];
    const movement = sceneOf({
      arbors: [a.arbor, b.arbor],
      rules: [a.rule, b.rule],
      wheels: [wheelOf('a', 'A', 60, 10, 2, { wobble: 0.2 }), wheelOf('b', 'B', 60, 12.6)],
    });
    expect(heightWithShake(movement)).toBeCloseTo(0.6 - 0.1, 12);
  });

  it('a pipe leans with what it rides on, and no more than its own play against it', () => {
    const a = arborAt('A', 0, 0, { bearings: bearings(0.1), levels: { from: -3, to: 70 } });
    const bush = (at: number) => ({ kind: 'bush', at, bore: 2.05, pivot: 2, length: 3 });
    const pipe = { id: 'B', at: [0, 0], ridesOn: 'A', diameter: 5, bearings: [bush(50), bush(60)] };
    const shake = shakeOf(sceneOf({ plates, arbors: [a.arbor, pipe], rules: [a.rule] }));
    expect(shake.tiltBetween(A, B)).toBeCloseTo(0.05 / 13, 12);
    expect(shake.tilt(B)).toBeCloseTo(0.1 / 48 + 0.05 / 13, 12);
  });
});

describe('what an arm carries', () => {
  const scene = (angle: number, more: object = {}, rule: object = {}) => {
    const arm = arborAt('X', 0, 0, { bearings: bearings(0.1), endShake: 0.3 });
    const b = arborAt('B', 60, 0, { bearings: bearings(0) });
    const at = [20 * Math.cos(angle), 20 * Math.sin(angle)];
    return sceneOf({
      plates,
      arbors: [arm.arbor, { id: 'A', at, diameter: 2, bearings: [{ at: 8, bore: 2, pivot: 2, length: 3 }] }, b.arbor],
      rules: [
        arm.rule,
        b.rule,
        { id: 'r', kind: 'radius', point: 'A', centre: 'X', length: 20, ...rule },
        { id: 'g', kind: 'bearing', point: 'A', centre: 'X', angle: (angle * 180) / Math.PI, ...rule },
      ],
      wheels: [wheelOf('a', 'A', 30, 10), wheelOf('b', 'B', 44, 10)],
      couplings: [{ id: 'c', kind: 'carrier', arm: 'X', carries: ['A'] }],
      ...more,
    });
  };

  it('has its play, end shake and lean', () => {
    const shake = shakeOf(scene(0));
    expect(shake.aside(A, 11)).toBeCloseTo(shake.aside('X' as ArborId, 11), 12);
    expect(shake.aside(A, 11)).toBeGreaterThan(0.04);
    expect(shake.lengthwise(A)).toBe(0.15);
    expect(shake.tilt(A)).toBeCloseTo(0.1 / 48, 12);
    // Against its own arm only its own bearing moves it.
    expect(shake.playsApart(A, 'X' as ArborId, 11)).toEqual([0, 0]);
  });

  it('keeps the ± of its gaps at any angle at which it is drawn', () => {
    const tells = (angle: number): number | undefined => {
      const placed = plantMovement(scene(angle, { limits: { radialGap: 9 } }, { plusMinus: 0.1 }));
      return checkMovement(placed).find(({ parts }) => parts.includes('a' as never) && parts.includes('b' as never))
        ?.gaps?.withPlusMinus;
    };
    const drawn = tells(0);
    expect(drawn).toBeDefined();
    for (const angle of [0.4, 1.3, 2.5, 4]) expect(tells(angle)).toBeCloseTo(drawn ?? 0, 9);
  });
});
