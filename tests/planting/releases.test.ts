/** What a drilled place lets go: only rules of its own point, and in a block those that leave the others the stillest. */
import { describe, expect, test } from 'vitest';
import { releasesAt } from '../../solver/planting/kernel/duties/releases.ts';
import { planNetwork } from '../../solver/planting/kernel/plan.ts';
import { plantNetwork } from '../../solver/planting/kernel/plant.ts';
import { reduceNetwork } from '../../solver/planting/kernel/reduce.ts';
import { type Network, PointState, RuleKind } from '../../solver/planting/network.ts';
import { type DraftRule, distance, networkFrom } from './scenes/builder.ts';
import { constructedNetwork } from './scenes/constructed.ts';
import { coupledNetwork } from './scenes/coupled.ts';
import { seeded } from './scenes/random.ts';

function releases(network: Network, places: Float64Array, facts: readonly number[]) {
  const coords = Float64Array.from(places);
  const reduction = reduceNetwork(network, coords);
  const plan = planNetwork(network, reduction);
  const work = { iterations: 0, evaluations: 0, blocks: 0 };
  return releasesAt({ network, reduction, incidence: plan.incidence, coords, work }, plan, facts);
}

/** The network without some rules, with points held at given places. */
function withFacts(
  network: Network,
  released: Uint8Array,
  facts: ReadonlyMap<number, readonly [number, number]>,
): Network {
  const rules: DraftRule[] = [];
  for (let r = 0; r < network.ruleCount; r++) {
    if (released[r]) continue;
    const points = Array.from(network.points.subarray(4 * r, 4 * r + 4)).filter((p) => p >= 0);
    rules.push({
      kind: network.kinds[r] as DraftRule['kind'],
      points,
      values: Array.from(network.values.subarray(3 * r, 3 * r + 3)),
    });
  }
  const at = Array.from({ length: network.pointCount }, (_, i): [number, number] => {
    const [x, y] = facts.get(i) ?? [network.coords[2 * i] ?? 0, network.coords[2 * i + 1] ?? 0];
    return [x, y];
  });
  const held = [...Array.from(network.held).flatMap((is, i) => (is ? [i] : [])), ...facts.keys()];
  return networkFrom({ at, held, rules });
}

/** Points of the first block that the plan solves together. */
function blockOf(network: Network): readonly number[] {
  const plan = planNetwork(network, reduceNetwork(network, Float64Array.from(network.coords)));
  return Array.from(plan.groups.find(({ kind }) => kind === 'square')?.roots ?? []);
}

const rulesNaming = (network: Network, point: number): number[] =>
  Array.from({ length: network.ruleCount }, (_, r) => r).filter((r) =>
    network.points.subarray(4 * r, 4 * r + 4).includes(point),
  );

describe('releases', () => {
  test('of a point that is struck alone: its own two rules', () => {
    const { network, known } = constructedNetwork(5, 20, 0);
    for (let u = 2; u < network.pointCount; u++) {
      const { released } = releases(network, known, [u]);
      const own = rulesNaming(network, u).slice(0, 2);
      expect(
        Array.from(released.keys()).filter((r) => released[r]),
        `point ${u}`,
      ).toEqual(own);
    }
  });

  test('in a block: two rules that name the point, and no other point moves farther than was told', () => {
    let moved = 0;
    let tried = 0;
    for (let seed = 1; seed <= 60; seed++) {
      const { network, known } = coupledNetwork(seed, 8, 0);
      const block = blockOf(network);
      const u = block[Math.floor(seeded(seed)() * block.length)];
      if (u === undefined) continue;
      tried++;
      const { released, factors } = releases(network, known, [u]);
      const let2 = Array.from(released.keys()).filter((r) => released[r]);
      expect(let2.length, `seed ${seed}`).toBe(2);
      for (const r of let2) expect(rulesNaming(network, u)).toContain(r);
      for (const turn of [0, 1, 2, 3]) {
        const hole = [
          (known[2 * u] ?? 0) + 1e-4 * Math.cos(turn),
          (known[2 * u + 1] ?? 0) + 1e-4 * Math.sin(turn),
        ] as const;
        const result = plantNetwork(withFacts(network, released, new Map([[u, hole]])));
        expect(
          result.states.every((state) => state === PointState.planted),
          `seed ${seed}`,
        ).toBe(true);
        for (const i of block) {
          if (i === u) continue;
          const way = Math.hypot(
            (result.coords[2 * i] ?? 0) - (known[2 * i] ?? 0),
            (result.coords[2 * i + 1] ?? 0) - (known[2 * i + 1] ?? 0),
          );
          // Told for small errors; a tenth of a micrometre of error leaves second order far below a hundredth part.
          expect(way, `seed ${seed}`).toBeLessThanOrEqual(1.01e-4 * (factors[0] ?? 0) + 1e-9);
          moved = Math.max(moved, way);
        }
      }
    }
    expect(moved).toBeGreaterThan(1e-5);
    expect(tried).toBeGreaterThan(20);
  });

  test('the pair let go is the stillest of all pairs', () => {
    for (let seed = 1; seed <= 12; seed++) {
      const { network, known } = coupledNetwork(seed, 7, 0);
      const block = blockOf(network);
      const u = block[0];
      if (u === undefined) continue;
      const { factors } = releases(network, known, [u]);
      const naming = rulesNaming(network, u);
      let least = Number.POSITIVE_INFINITY;
      for (const [a, b] of naming.flatMap((first, k) =>
        naming.slice(k + 1).map((second) => [first, second] as const),
      )) {
        const released = new Uint8Array(network.ruleCount);
        released[a] = 1;
        released[b] = 1;
        least = Math.min(least, worstMove(network, known, block, released));
      }
      expect(Math.abs((factors[0] ?? 0) - least) / least, `seed ${seed}`).toBeLessThan(0.02);
    }
  });

  test('several facts of one block release the same in any order', () => {
    for (let seed = 1; seed <= 12; seed++) {
      const { network, known } = coupledNetwork(seed, 10, 0);
      const free = Array.from(network.held.keys())
        .filter((i) => !network.held[i])
        .slice(0, 3);
      const told = releases(network, known, free).released;
      expect(releases(network, known, [...free].reverse()).released).toEqual(told);
      expect(told.reduce((sum, one) => sum + one, 0)).toBe(6);
    }
  });

  test('a loose point releases nothing', () => {
    const network = networkFrom({
      at: [
        [0, 0],
        [10, 0],
      ],
      held: [0],
      rules: [distance(0, 1, 10)],
    });
    expect(Array.from(releases(network, network.coords, [1]).released)).toEqual([0]);
  });

  test('a depth stays before a direction where the others move no more than twice as far', () => {
    // Two points on each other's arcs: a block of four rules, one of the drilled point's a direction.
    const at = [
      [0, 0],
      [60, 0],
      [20, 20],
      [40, 22],
    ] as const;
    const length = (a: number, b: number): number =>
      Math.hypot((at[a]?.[0] ?? 0) - (at[b]?.[0] ?? 0), (at[a]?.[1] ?? 0) - (at[b]?.[1] ?? 0));
    const reach = (a: number, b: number): DraftRule => distance(a, b, length(a, b));
    const ray: DraftRule = { kind: RuleKind.ray, points: [2, 1, 3], values: [0] };
    const angle = Math.atan2(20, -40) - Math.atan2(22, -20);
    const rules = [reach(2, 0), { ...ray, values: [angle] }, reach(2, 3), reach(3, 1)];
    const network = networkFrom({ at, held: [0, 1], rules });
    const { released } = releases(network, network.coords, [2]);
    expect(released[1]).toBe(1);
    expect(released[3]).toBe(0);
  });
});

/** How far another point moves at most for holes all round, against their distance. */
function worstMove(network: Network, known: Float64Array, block: readonly number[], released: Uint8Array): number {
  const u = block[0] ?? 0;
  let worst = 0;
  for (let turn = 0; turn < 24; turn++) {
    const [dx, dy] = [1e-5 * Math.cos((turn * Math.PI) / 12), 1e-5 * Math.sin((turn * Math.PI) / 12)];
    const hole = [(known[2 * u] ?? 0) + dx, (known[2 * u + 1] ?? 0) + dy] as const;
    const result = plantNetwork(withFacts(network, released, new Map([[u, hole]])));
    if (!result.states.every((state) => state === PointState.planted)) return Number.POSITIVE_INFINITY;
    for (const i of block) {
      if (i === u) continue;
      const way = Math.hypot(
        (result.coords[2 * i] ?? 0) - (known[2 * i] ?? 0),
        (result.coords[2 * i + 1] ?? 0) - (known[2 * i + 1] ?? 0),
      );
      worst = Math.max(worst, way / 1e-5);
    }
  }
  return worst;
}
