import { describe, expect, it } from 'vitest';
import { assemblyOrder, checkMovement, stackOf } from '../../solver/clearance/index.ts';
import type { ArborId } from '../../solver/movement/ids.ts';
import { plantMovement } from '../../solver/planting/index.ts';
import { assemblySays } from '../../solver/words/clearance/index.ts';
import { speakerOf } from '../../solver/words/index.ts';
import { arborAt, sceneOf, wheelOf } from './scenes.ts';

const plates = [
  { id: 'lower', outline: { kind: 'circle', centre: [0, 0], radius: 80 }, levels: { from: -3, to: 0 } },
  { id: 'upper', outline: { kind: 'circle', centre: [0, 0], radius: 80 }, levels: { from: 30, to: 33 } },
];
const bearings = ['lower', 'upper'].map((plate) => ({ plate, bore: 1.02, pivot: 1, length: 3 }));
const A = 'A' as ArborId;

/** An arbor between plates 30 apart, with wheels at the given levels, 2 thick. */
function stacked(levels: readonly number[], endShake: number, more: object = {}) {
  const a = arborAt('A', 0, 0, { bearings, endShake, ...more });
  return sceneOf({
    plates,
    arbors: [a.arbor],
    rules: [a.rule],
    wheels: levels.map((level, i) => wheelOf(`w${i}`, 'A', 20, level)),
  });
}

describe('the stack of an arbor', () => {
  it('fills the distance of the plates with wheels and the bare lengths between, worked by hand', () => {
    const stack = stackOf(stacked([5, 20], 0.2), A, { piece: 0.02, plates: 0.05 });
    if (stack.kind !== 'stack') throw new Error(stack.kind);
    expect(stack.pieces.map(({ kind, from, to }) => [kind, from, to])).toEqual([
      ['bare', 0, 5],
      ['wheel', 5, 7],
      ['bare', 7, 20],
      ['wheel', 20, 22],
      ['bare', 22, 30],
    ]);
    expect(stack.length).toBeCloseTo(29.8, 12);
    expect(stack.room).toBeCloseTo(30 - 17, 12);
    // Five pieces of ±0.02 and plates of ±0.05: 0.15 at worst, √(0.0025 + 5·0.0004) as a rule.
    expect(stack.worst[0]).toBeCloseTo(0.05, 12);
    expect(stack.statistical[0]).toBeCloseTo(0.2 - Math.sqrt(0.0045), 12);
  });

  it('tells what stands in front of the plate apart', () => {
    const stack = stackOf(stacked([5, 40], 0.2, { levels: { from: -3, to: 45 } }), A);
    if (stack.kind !== 'stack') throw new Error(stack.kind);
    expect(stack.outside.map(({ part }) => part)).toEqual(['w1']);
  });

  it('takes the tolerances of the movement where none are given', () => {
    const movement = { ...stacked([5, 20], 0.2), stackTolerance: { piece: 0.01, plates: 0 } };
    const stack = stackOf(movement, A);
    expect(stack).toMatchObject({ worst: [expect.closeTo(0.15, 12), expect.closeTo(0.25, 12)] });
  });

  it('says why an arbor without two plates has none', () => {
    const a = arborAt('A', 0, 0);
    expect(stackOf(sceneOf({ arbors: [a.arbor], rules: [a.rule] }), A)).toMatchObject({ kind: 'none' });
  });

  it('finds parts that leave less room than the end shake, and shake that small errors use up', () => {
    const stacks = (movement: ReturnType<typeof stacked>) =>
      checkMovement(plantMovement(movement)).filter(({ kind }) => kind === 'stack');
    const collars = [{ diameter: 4, from: 0, to: 29.9 }];
    expect(stacks(stacked([], 0.2, { collars }))).toMatchObject([{ severity: 'warns', gap: expect.closeTo(0.1, 9) }]);
    expect(stacks(stacked([5, 20], 0.2))).toEqual([]);
    expect(stacks(stacked([5, 20], 0.06))).toMatchObject([{ severity: 'notes' }]);
  });
});

describe('parts seated against each other', () => {
  /** Five wheels of 4.0 between plates 20.5 apart, each against the next, with their thicknesses as found. */
  const five = (thickness: number, more: object = {}) => {
    const near = [
      { id: 'lower', outline: { kind: 'circle', centre: [0, 0], radius: 80 }, levels: { from: -3, to: 0 } },
      { id: 'upper', outline: { kind: 'circle', centre: [0, 0], radius: 80 }, levels: { from: 20.5, to: 23.5 } },
    ];
    const a = arborAt('A', 0, 0, { bearings, endShake: 0.5 });
    const found = thickness === 4 ? {} : { asDrawn: { thickness: 4 } };
    const wheels = [0, 1, 2, 3, 4].map((i) =>
      wheelOf(`w${i}`, 'A', 20, 0.25 + 4 * i, thickness, { ...found, ...more }),
    );
    return sceneOf({ plates: near, arbors: [a.arbor], rules: [a.rule], wheels });
  };
  const leftOf = (movement: ReturnType<typeof five>) => {
    const stack = stackOf(movement, A, { piece: 0.02, plates: 0.05 });
    if (stack.kind !== 'stack') throw new Error(stack.kind);
    return stack;
  };

  it('five parts of 4.0 between plates 20.5 apart leave 0.5; each 0.1 too thick leave 0.0, which stops', () => {
    expect(leftOf(five(4)).left).toBeCloseTo(0.5, 9);
    expect(leftOf(five(4.1)).left).toBeCloseTo(0, 9);
    const stacks = (movement: ReturnType<typeof five>) =>
      checkMovement(plantMovement(movement)).filter(({ kind }) => kind === 'stack' || kind === 'fouls');
    const found = stacks(five(4.1));
    expect(found).toMatchObject([{ kind: 'stack', severity: 'stops', gap: expect.closeTo(0, 9) }]);
    expect(stacks(five(4))).toEqual([]);
  });

  it('each piece has its own ±: both sums', () => {
    // Five of ±0.03, two bare ends of ±0.02, plates of ±0.05.
    const { worst, statistical } = leftOf(five(4, { thicknessPlusMinus: 0.03 }));
    expect(worst[0]).toBeCloseTo(0.5 - 5 * 0.03 - 2 * 0.02 - 0.05, 9);
    expect(statistical[0]).toBeCloseTo(0.5 - Math.sqrt(5 * 0.03 ** 2 + 2 * 0.02 ** 2 + 0.05 ** 2), 9);
  });

  it('without shoulders the end shake is what the parts leave, whatever is stated', () => {
    const movement = five(4);
    const plain = { ...movement, arbors: movement.arbors.map((arbor) => ({ ...arbor, diameter: 1, endShake: 0.1 })) };
    expect(leftOf(plain).left).toBeCloseTo(0.5, 9);
  });
});

describe('the stack of a pipe', () => {
  /** A pipe of 6 round an arbor of 4, in front of the plates: from 34 to 50, a wheel on it, collars on the arbor. */
  const piped = (collars: readonly object[], more: object = {}) => {
    const a = arborAt('A', 0, 0, { bearings, diameter: 4, levels: { from: -3, to: 60 }, endShake: 0.2, collars });
    const pipe = {
      id: 'B',
      name: 'Pipe',
      at: [0, 0],
      diameter: 6,
      ridesOn: 'A',
      pipeBore: 4.2,
      levels: { from: 34, to: 50 },
      endShake: 0.15,
      bearings: [{ kind: 'bush', at: 34, bore: 4.02, pivot: 4, length: 3 }],
      ...more,
    };
    return sceneOf({ plates, arbors: [a.arbor, pipe], rules: [a.rule], wheels: [wheelOf('w', 'B', 20, 36)] });
  };
  const below = { diameter: 7, from: 33, to: 33.95 };
  const above = { diameter: 7, from: 50.1, to: 52 };
  const B = 'B' as ArborId; // an id of the scene
  const stacks = (movement: ReturnType<typeof piped>) =>
    checkMovement(plantMovement(movement)).filter(({ kind, parts }) => kind === 'stack' && parts.includes(B));

  it('is what its stops leave it, with the errors of the lengths between, worked by hand', () => {
    const stack = stackOf(piped([below, above]), B, { piece: 0.02, plates: 0.05 });
    if (stack.kind !== 'pipe') throw new Error(stack.kind);
    expect([stack.below, stack.above]).toMatchObject([
      { part: 'A', piece: 'collar' },
      { part: 'A', piece: 'collar' },
    ]);
    expect(stack.room).toBeCloseTo(0.05 + 0.1, 12);
    expect(stack.pieces.map(({ kind, from, to }) => [kind, from, to])).toEqual([
      ['bare', 34, 36],
      ['wheel', 36, 38],
      ['bare', 38, 50],
    ]);
    // Three lengths of the pipe and the one between the two collars: four of ±0.02.
    expect(stack.worst).toEqual([expect.closeTo(0.07, 12), expect.closeTo(0.23, 12)]);
    expect(stack.statistical).toEqual([expect.closeTo(0.11, 12), expect.closeTo(0.19, 12)]);
    expect(stack.neighbours).toBe(0);
    expect(stacks(piped([below, above]))).toEqual([]);
  });

  it('may lie between the arbor and a plate: two errors of place, and half the end shake of the arbor', () => {
    // The upper plate, 30 to 33, has a bore of 1.02 here: the foot of the pipe stands on it, 1 above its face.
    const stack = stackOf(piped([above]), B, { piece: 0.02, plates: 0.05 });
    if (stack.kind !== 'pipe') throw new Error(stack.kind);
    expect(stack.below).toMatchObject({ part: 'upper', at: 33, gap: 1 });
    expect(stack.neighbours).toBeCloseTo(0.1, 12);
    expect(stack.worst?.[0]).toBeCloseTo(1.1 - 3 * 0.02 - 0.05 - 0.02, 12);
    expect(stacks(piped([above]))).toMatchObject([{ severity: 'notes', gap: expect.closeTo(1.1, 9) }]);
  });

  it('a collar that passes through the bore is no stop, one that meets the bush inside is', () => {
    const thin = (diameter: number) => stackOf(piped([{ ...below, diameter }, above]), B);
    expect(thin(4.01)).toMatchObject({ below: { part: 'upper' } });
    expect(thin(4.1)).toMatchObject({ below: { part: 'A', gap: expect.closeTo(0.05, 12) } });
  });

  it('is told where it is too short, used up by errors, or open on a side', () => {
    const tight = { ...above, from: 50.02 };
    expect(stacks(piped([below, tight]))).toMatchObject([{ severity: 'warns', gap: expect.closeTo(0.07, 9) }]);
    expect(stacks(piped([below, tight], { endShake: 0.05 }))).toEqual([]);
    expect(stacks(piped([{ ...below, to: 34 }, tight], { endShake: 0.02 }))).toMatchObject([
      { severity: 'notes', gap: expect.closeTo(-0.02, 9) },
    ]);
    expect(stacks(piped([below]))).toMatchObject([
      { severity: 'notes', cause: { kind: 'pipeUnstopped', up: true, down: false } },
    ]);
    expect(stackOf(piped([below, above], { turns: 'withArbor' }), B)).toMatchObject({ kind: 'none' });
  });

  it('stops that touch do not foul each other', () => {
    const found = checkMovement(plantMovement(piped([below, above])));
    expect(found.filter(({ kind }) => kind === 'fouls' || kind === 'tooClose')).toEqual([]);
  });
});

describe('bearings', () => {
  const found = (x: number, more: object = {}) => {
    const a = arborAt('A', x, 0, { bearings, ...more });
    return checkMovement(plantMovement(sceneOf({ plates, arbors: [a.arbor], rules: [a.rule] }))).filter(
      ({ kind }) => kind === 'bearing',
    );
  };
  it('break out of the edge of their plate by what the circles say', () => {
    expect(found(0)).toEqual([]);
    // Centre 79.8 out, hole radius 0.51, plate 80: 0.31 beyond the edge, in both plates.
    expect(found(79.8).map(({ gap }) => gap)).toEqual([expect.closeTo(-0.31, 9), expect.closeTo(-0.31, 9)]);
  });
  it('need a shoulder', () => {
    expect(found(0, { diameter: 0.8 })).toMatchObject([{ parts: ['A'], severity: 'stops' }]);
  });
});

describe('the order of assembly', () => {
  const order = (levelsOfA: readonly number[], levelsOfB: readonly number[], more: object = {}) => {
    const [a, b] = [arborAt('A', 0, 0, { bearings }), arborAt('B', 15, 0, { bearings })];
    const placed = plantMovement(
      sceneOf({
        plates,
        arbors: [a.arbor, b.arbor],
        rules: [a.rule, b.rule],
        wheels: [
          ...levelsOfA.map((level, i) => wheelOf(`a${i}`, 'A', 20, level)),
          ...levelsOfB.map((level, i) => wheelOf(`b${i}`, 'B', 20, level)),
        ],
        ...more,
      }),
    );
    const found = assemblyOrder(placed);
    return { ...found, says: assemblySays(found, speakerOf(placed.movement)) };
  };
  it('the arbor whose wheel is under another comes out second', () => {
    const { groups, says } = order([5], [10]);
    expect(groups).toEqual([['B'], ['A']]);
    expect(says).toEqual(['A cannot be lifted out while B is in.']);
  });
  it('wheels that reach over each other both ways come out together', () => {
    expect(order([5, 15], [10]).groups).toEqual([['A', 'B']]);
  });
  it('a screw head over a wheel holds its arbor for good', () => {
    const a = arborAt('A', 0, 0, { bearings });
    const movement = sceneOf({
      plates,
      arbors: [a.arbor],
      rules: [a.rule, { id: 'p', kind: 'held', point: 'P', at: [14, 0] }],
      wheels: [wheelOf('a', 'A', 20, 5)],
      posts: [
        {
          id: 'P',
          name: 'Post',
          at: [14, 0],
          diameter: 4,
          levels: { from: 0, to: 30 },
          heads: [{ diameter: 10, from: 12, to: 14 }],
        },
      ],
    });
    const found = checkMovement(plantMovement(movement), { depths: true });
    expect(found.map(({ kind, parts }) => [kind, ...parts])).toEqual([['assembly', 'A', 'P']]);
  });
});
