import { describe, expect, it } from 'vitest';
import { checkMovement } from '../../solver/clearance/index.ts';
import { plantMovement } from '../../solver/planting/index.ts';
import { arborAt, sceneOf, wheelOf } from './scenes.ts';
import { wordsOf } from './wordsOf.ts';

const gaps = (movement: ReturnType<typeof sceneOf>) =>
  checkMovement(plantMovement(movement)).filter(({ kind }) => kind === 'fouls' || kind === 'tooClose');

describe('parts that are not round, over the full turn', () => {
  const post = (x: number) => ({
    posts: [{ id: 'P', at: [0, x], diameter: 4, levels: { from: 0, to: 10 } }],
  });
  const hand = (x: number, from: number) => {
    const a = arborAt('A', 0, 0, {
      levels: { from: -2, to: 0 },
      swept: [{ name: 'Hour hand', kind: 'hand', farthest: 30, from, to: from + 1 }],
    });
    return sceneOf({
      arbors: [a.arbor],
      rules: [a.rule, { id: 'p', kind: 'held', point: 'P', at: [0, x] }],
      ...post(x),
    });
  };
  it('a hand meets whatever stands within its length, wherever it points', () => {
    const fouls = gaps(hand(31, 5));
    expect(fouls).toMatchObject([{ kind: 'fouls', gap: expect.closeTo(-1, 9) }]);
    expect(fouls.map(wordsOf(hand(31, 5)).finding)).toEqual(['Hour hand and post 1 foul by 1.000 mm.']);
    expect(gaps(hand(32.6, 5))).toEqual([]);
    expect(gaps(hand(31, 10.4))).toEqual([]);
  });
  it('a pin far from the axis passes round what stands near it', () => {
    const a = arborAt('A', 0, 0, {
      levels: { from: -2, to: 0 },
      swept: [{ kind: 'pin', nearest: 19, farthest: 21, from: 1, to: 5 }],
    });
    const scene = (x: number) =>
      sceneOf({ arbors: [a.arbor], rules: [a.rule, { id: 'p', kind: 'held', point: 'P', at: [0, x] }], ...post(x) });
    expect(gaps(scene(16.4))).toEqual([]);
    expect(gaps(scene(16.8))).toMatchObject([{ kind: 'tooClose', gap: expect.closeTo(0.2, 9) }]);
  });
  it('two hands of one axis must pass each other in height', () => {
    const scene = (from: number) => {
      const a = arborAt('A', 0, 0, {
        levels: { from: 0, to: 20 },
        swept: [{ kind: 'hand', farthest: 40, from: 12, to: 13 }],
      });
      const pipe = {
        id: 'B',
        name: 'B',
        at: [0, 0],
        diameter: 4,
        ridesOn: 'A',
        pipeBore: 2,
        levels: { from: 0, to: 11 },
        swept: [{ kind: 'hand', farthest: 30, from, to: from + 1 }],
      };
      return sceneOf({ arbors: [a.arbor, pipe], rules: [a.rule] });
    };
    expect(gaps(scene(10))).toEqual([]);
    expect(gaps(scene(10.9))).toMatchObject([{ kind: 'tooClose', gap: expect.closeTo(0.1, 9) }]);
  });
  it('what an arm carries round is met in a whole ring, save by what goes round with it', () => {
    const [arm, planet, other] = [
      arborAt('ARM', 0, 0, { levels: { from: -2, to: 0 } }),
      arborAt('PLANET', 20, 0, { levels: { from: -2, to: 0 } }),
      arborAt('OTHER', 20, 12, { levels: { from: -2, to: 0 } }),
    ];
    const scene = (postAt: number, carries: string[]) =>
      sceneOf({
        arbors: [arm.arbor, planet.arbor, other.arbor],
        rules: [arm.rule, planet.rule, other.rule, { id: 'p', kind: 'held', point: 'P', at: [-postAt, 0] }],
        wheels: [wheelOf('planet', 'PLANET', 10, 2), wheelOf('other', 'OTHER', 10, 2)],
        posts: [{ id: 'P', at: [-postAt, 0], diameter: 4, levels: { from: 0, to: 10 } }],
        couplings: [{ id: 'c', kind: 'carrier', arm: 'ARM', carries }],
      });
    // The planet reaches from 15 to 25 about the arm; both together they keep 2 between them and reach 28.32.
    expect(gaps(scene(32, ['PLANET', 'OTHER']))).toEqual([]);
    expect(gaps(scene(27.2, ['PLANET'])).map(({ parts, gap }) => [...parts, gap])).toContainEqual([
      'planet',
      'P',
      expect.closeTo(0.2, 9),
    ]);
    expect(gaps(scene(40, ['PLANET'])).map(({ parts }) => parts)).toEqual([['planet', 'other']]);
  });
});
