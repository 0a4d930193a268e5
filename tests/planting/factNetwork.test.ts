/** Facts put into a drawing: upstream stands still bit for bit, patterns belong to the drawing, nothing is contested. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { checkingRules } from '../../solver/planting/kernel/duties/duties.ts';
import { type Fact, factNetwork } from '../../solver/planting/kernel/duties/factNetwork.ts';
import { planNetwork } from '../../solver/planting/kernel/plan.ts';
import { plantNetwork } from '../../solver/planting/kernel/plant.ts';
import { reduceNetwork } from '../../solver/planting/kernel/reduce.ts';
import { type Network, PointState, RuleKind } from '../../solver/planting/network.ts';
import { type DraftRule, distance, networkFrom } from './scenes/builder.ts';
import { constructedNetwork } from './scenes/constructed.ts';
import { everyKind } from './scenes/everyKind.ts';
import { withChecks } from './scenes/withChecks.ts';

/** The network without the rules that check: what places is all that the kernel is asked. */
function placingOnly(network: Network, checks: Uint8Array): Network {
  const rules: DraftRule[] = [];
  for (let r = 0; r < network.ruleCount; r++) {
    if (checks[r]) continue;
    const points = Array.from(network.points.subarray(4 * r, 4 * r + 4)).filter((p) => p >= 0);
    const values = Array.from(network.values.subarray(3 * r, 3 * r + 3));
    rules.push({ kind: network.kinds[r] as DraftRule['kind'], points, values });
  }
  const at = Array.from(
    { length: network.pointCount },
    (_, i) => [network.coords[2 * i] ?? 0, network.coords[2 * i + 1] ?? 0] as const,
  );
  const held = Array.from(network.held.keys()).filter((i) => network.held[i]);
  const sides = Array.from(network.sides.keys()).flatMap((i) =>
    network.sides[i] ? [[i, network.sides[i] ?? 0, network.sideFrom[i] ?? 0, network.sideTo[i] ?? 0] as const] : [],
  );
  return networkFrom({ at, held, rules, sides });
}

function drawn(network: Network) {
  const checks = checkingRules(network, reduceNetwork(network, Float64Array.from(network.coords)));
  const result = plantNetwork(placingOnly(network, checks));
  return { checks, result };
}

function made(network: Network, facts: readonly Fact[]) {
  const { checks, result } = drawn(network);
  const coords = Float64Array.from(result.coords);
  const reduction = reduceNetwork(network, coords);
  const plan = planNetwork(network, reduction, checks);
  const work = { iterations: 0, evaluations: 0, blocks: 0 };
  const told = factNetwork({ network, reduction, incidence: plan.incidence, coords, work }, plan, checks, facts);
  return { ...told, drawnAt: result.coords, result: plantNetwork(placingOnly(told.network, told.checks)) };
}

const at = (coords: Float64Array, i: number): [number, number] => [
  coords[2 * i] ?? Number.NaN,
  coords[2 * i + 1] ?? Number.NaN,
];

/** Points that hang on one, through placing rules struck after it. */
function hangingOn(network: Network, from: number): Set<number> {
  const plan = planNetwork(network, reduceNetwork(network, Float64Array.from(network.coords)));
  const found = new Set([from]);
  for (let s = 0; s < plan.stepCount; s++) {
    for (const r of [plan.ruleA[s] ?? 0, plan.ruleB[s] ?? 0]) {
      const named = network.points.subarray(4 * r, 4 * r + 2);
      if (Array.from(named).some((p) => found.has(p)) && (plan.root[s] ?? -1) >= 0) found.add(plan.root[s] ?? -1);
    }
  }
  return found;
}

describe('facts', () => {
  test('a hole off its place moves only what hangs on it, and contests nothing', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 1e6 }),
        fc.nat(),
        fc.double({ min: 0, max: 6.28, noNaN: true }),
        (seed, pick, turn) => {
          const network = withChecks(constructedNetwork(seed, 14, 0), seed, 5).network;
          const point = 2 + (pick % (network.pointCount - 2));
          const [x, y] = at(drawn(network).result.coords, point);
          const { result, drawnAt } = made(network, [
            { point, x: x + 0.05 * Math.cos(turn), y: y + 0.05 * Math.sin(turn) },
          ]);
          // Where arcs no longer reach because of the hole, that point is contested lawfully: such cases are left out.
          fc.pre(!Array.from(result.states).includes(PointState.contested));
          expect(Array.from(result.states).every((state) => state === PointState.planted)).toBe(true);
          const follow = hangingOn(placingOnly(network, drawn(network).checks), point);
          for (let i = 0; i < network.pointCount; i++) {
            if (!follow.has(i)) expect(at(result.coords, i)).toEqual(at(drawnAt, i));
          }
          expect(at(result.coords, point)).toEqual([x + 0.05 * Math.cos(turn), y + 0.05 * Math.sin(turn)]);
        },
      ),
      { numRuns: 80 },
    );
  });

  test('a fact at the drawn place moves nothing, of any kind of point', () => {
    for (let seed = 1; seed <= 10; seed++) {
      const { network } = everyKind(seed, 0);
      const places = drawn(network).result.coords;
      for (let point = 0; point < network.pointCount; point++) {
        const [x, y] = at(places, point);
        const { result } = made(network, [{ point, x, y }]);
        for (let i = 0; i < network.pointCount; i++) {
          expect(
            Math.hypot(at(result.coords, i)[0] - at(places, i)[0], at(result.coords, i)[1] - at(places, i)[1]),
          ).toBeLessThan(1e-9);
        }
      }
    }
  });

  test('patterns go on from where their point was drawn; a drilled centre is followed', () => {
    const places = [
      [0, 0],
      [20, 0],
      [-20, 0],
      [0, 20],
    ] as const;
    const rules: DraftRule[] = [
      distance(1, 0, 20),
      { kind: RuleKind.ray, points: [1, 0], values: [0] },
      { kind: RuleKind.opposite, points: [2, 0, 1] },
      { kind: RuleKind.turned, points: [3, 1, 0], values: [Math.PI / 2] },
    ];
    const network = networkFrom({ at: places, held: [0], rules });
    const off = made(network, [{ point: 1, x: 20.05, y: 0.02 }]);
    expect(at(off.result.coords, 1)).toEqual([20.05, 0.02]);
    expect(at(off.result.coords, 2)[0]).toBeCloseTo(-20, 12);
    expect(at(off.result.coords, 3)[1]).toBeCloseTo(20, 12);
    expect(off.ghostOf.has(1)).toBe(true);
    const far = made(network, [{ point: 2, x: -20.05, y: 0.02 }]);
    expect(at(far.result.coords, 1)).toEqual(at(far.drawnAt, 1));
    expect(at(far.result.coords, 2)).toEqual([-20.05, 0.02]);
    const centre = made(network, [{ point: 0, x: 0.03, y: 0 }]);
    expect(at(centre.result.coords, 1)[0]).toBeCloseTo(20.03, 12);
    expect(at(centre.result.coords, 2)[0]).toBeCloseTo(-19.97, 12);
  });

  test('the far one of a chain of opposites stays when the middle one is drilled', () => {
    const places = [
      [0, 0],
      [20, 0],
      [-20, 0],
      [-20, 40],
      [20, 40],
    ] as const;
    const rules: DraftRule[] = [
      distance(1, 0, 20),
      { kind: RuleKind.ray, points: [1, 0], values: [0] },
      { kind: RuleKind.opposite, points: [2, 0, 1] },
      // The next one stands opposite the second about a held point.
      { kind: RuleKind.opposite, points: [4, 3, 2] },
    ];
    const network = networkFrom({ at: places, held: [0, 3], rules });
    const { result, drawnAt } = made(network, [{ point: 2, x: -20.1, y: 0 }]);
    expect(at(result.coords, 2)).toEqual([-20.1, 0]);
    expect(at(result.coords, 4)).toEqual(at(drawnAt, 4));
  });

  test('facts in any order give the same bits', () => {
    for (let seed = 1; seed <= 20; seed++) {
      const { network } = constructedNetwork(seed, 12, 0);
      const places = drawn(network).result.coords;
      const facts = [3, 7, 9].map(
        (point): Fact => ({ point, x: at(places, point)[0] + 0.02, y: at(places, point)[1] - 0.01 }),
      );
      expect(made(network, [...facts].reverse()).result.coords).toEqual(made(network, facts).result.coords);
    }
  });
});
