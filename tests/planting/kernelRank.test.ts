/** "Planted" is a proof: bodies that swing, arcs that touch, places where a rule has no meaning; a sample of the long proof. */
import { describe, expect, it } from 'vitest';
import { plantNetwork } from '../../solver/planting/kernel/plant.ts';
import { PointState, RuleKind } from '../../solver/planting/network.ts';
import { proof } from '../proof/rank.ts';
import { bracedNetwork } from './scenes/braced.ts';
import { distance, networkFrom } from './scenes/builder.ts';
import { seeded } from './scenes/random.ts';

const ray = (p: number, a: number, angle: number) => ({ kind: RuleKind.ray, points: [p, a], values: [angle] });

describe('planted is only said where nothing can move', () => {
  it('a sample of the long proof against a singular value decomposition', () => {
    const { wrong, lines } = proof.run(2400, 17);
    expect(wrong, lines.join('\n')).toBe(0);
  });

  it('a rectangle of six distances held at one corner swings, wherever it is sketched near the axes', () => {
    const random = seeded(4);
    for (let n = 0; n < 300; n++) {
      const [w, h] = [10 + 30 * random(), 10 + 30 * random()];
      const off = (): number => (n % 3 === 0 ? 0 : 2 * (random() - 0.5));
      const [d, at] = [
        Math.hypot(w, h),
        [
          [0, 0],
          [w + off(), off()],
          [w + off(), h + off()],
          [off(), h + off()],
        ] as const,
      ];
      const rules = [
        distance(0, 1, w),
        distance(1, 2, h),
        distance(2, 3, w),
        distance(3, 0, h),
        distance(0, 2, d),
        distance(1, 3, d),
      ];
      const result = plantNetwork(networkFrom({ at, held: [0], rules }));
      expect([result.freeMotions, result.spare.length]).toEqual([1, 1]);
      expect(Array.from(result.states)).toEqual([PointState.planted, 1, 1, 1]);
    }
  });

  it('a block of a hundred points with a strut too few, and one on which nothing is held', () => {
    const { network } = bracedNetwork(5, 10, 10, 0.3);
    // The last strut is said twice: as many rules as coordinates, and still one motion.
    const points = network.points.slice();
    points.set(points.subarray(4 * (network.ruleCount - 2), 4 * (network.ruleCount - 1)), 4 * (network.ruleCount - 1));
    const values = network.values.slice();
    values[3 * (network.ruleCount - 1)] = values[3 * (network.ruleCount - 2)] as number; // within the list
    const result = plantNetwork({ ...network, points, values });
    expect(result.freeMotions).toBe(1);
    expect(result.states.filter((state) => state === PointState.loose).length).toBeGreaterThan(90);
  });
});

describe('no rule holds by degeneration', () => {
  const held = [0, 1];
  const at = [
    [0, 0],
    [30, 0],
    [10, 20],
  ] as const;

  it('of two directions about one centre the second checks: the point is loose on the first, never on the centre', () => {
    const result = plantNetwork(networkFrom({ at, held, rules: [ray(2, 0, 0.35), ray(2, 0, 0.87)] }));
    expect(result.states[2]).toBe(PointState.loose);
    expect(Array.from(result.checks)).toEqual([0, 1]);
    const radius = Math.hypot(result.coords[4] ?? 0, result.coords[5] ?? 0);
    expect(radius).toBeGreaterThan(10);
    expect(result.missBy[1]).toBeCloseTo(0.52 * radius, 9);
    expect(result.against(1)).toEqual([1, 0]);
  });

  it('two lines through one named point contradict', () => {
    const lines = [
      { kind: RuleKind.inLine, points: [2, 0, 1] },
      { kind: RuleKind.inLine, points: [2, 0, 3] },
    ];
    const result = plantNetwork(networkFrom({ at: [...at, [5, 40]], held: [0, 1, 3], rules: lines }));
    expect([result.states[2], result.disagreements[0]?.isDegenerate]).toEqual([PointState.contested, true]);
  });

  it('an opposite of the centre contradicts', () => {
    const rules = [
      { kind: RuleKind.samePlace, points: [2, 0] },
      { kind: RuleKind.opposite, points: [3, 0, 2] },
    ];
    const result = plantNetwork(networkFrom({ at: [...at, [5, 40]], held, rules }));
    expect([result.states[3], result.disagreements.length]).toEqual([PointState.contested, 1]);
  });

  it('of two crossings the one on the centre of the direction does not count', () => {
    // The circle about B through A meets a ray from A in A itself, and once more.
    const result = plantNetwork(
      networkFrom({ at: [at[0], at[1], [0.5, 0.5]], held, rules: [ray(2, 0, 0.5), distance(2, 1, 30)] }),
    );
    expect(result.coords[4]).toBeCloseTo(60 * Math.cos(0.5) ** 2, 9);
    expect(result.states[2]).toBe(PointState.planted);
  });
});

describe('how well a place is settled is told', () => {
  it('links that lie parallel: equal ones move, unequal ones only touch', () => {
    const plantOn = (feet: readonly (readonly [number, number])[]) => {
      const heads = feet.map(([x]): [number, number] => [x, 20]);
      const rules = [
        ...feet.map(([, y], k) => distance(k, 3 + k, 20 - y)),
        distance(3, 4, 15),
        distance(5, 6, 20),
        distance(3, 6, 25),
        distance(4, 6, Math.hypot(0, 20)),
        distance(3, 5, 30),
      ];
      return plantNetwork(
        networkFrom({
          at: [...feet, ...heads, [15, 40]].map(([x, y]): [number, number] => [x as number, y as number]),
          held: [0, 1, 2],
          rules: rules.map((rule) => (rule.points[0] === 5 ? distance(5, 6, Math.hypot(15, 20)) : rule)),
        }),
      );
    };
    const equal = plantOn([
      [0, 0],
      [15, 0],
      [30, 0],
    ]);
    expect([equal.freeMotions, equal.doubts.length, equal.spare.length]).toEqual([1, 0, 0]);
    const unequal = plantOn([
      [0, 0],
      [15, -5],
      [30, 4],
    ]);
    expect([unequal.freeMotions, unequal.doubts[0]?.kind]).toEqual([0, 'touching']);
    expect(unequal.states.every((state) => state === PointState.planted)).toBe(true);
  });

  it('lines that cross at less than a millionth settle a point barely', () => {
    const near = plantNetwork(
      networkFrom({
        at: [
          [0, 0],
          [0, 10],
          [1, 1],
        ],
        held: [0],
        rules: [
          { kind: RuleKind.onLine, points: [1], values: [0, 1, 10] },
          { kind: RuleKind.onLine, points: [1], values: [Math.sin(1e-7), Math.cos(1e-7), 10 * Math.cos(1e-7)] },
          distance(2, 0, 8),
          distance(2, 1, 7),
        ],
      }),
    );
    expect(near.states[1]).toBe(PointState.planted);
    expect(near.doubts[0]?.kind).toBe('barely');
    expect(near.doubts[0]?.points).toContain(1);
  });
});
