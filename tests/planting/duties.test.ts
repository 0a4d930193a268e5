/** Duties: greedy generic rank from the drawing alone, held against a plain dense rank at other places. */
import fc from 'fast-check';
import { Matrix, SingularValueDecomposition } from 'ml-matrix';
import { describe, expect, test } from 'vitest';
import { checkingRules } from '../../solver/planting/kernel/duties/duties.ts';
import { reduceNetwork } from '../../solver/planting/kernel/reduce.ts';
import { type Network, RuleKind } from '../../solver/planting/network.ts';
import { type DraftRule, distance, networkFrom } from './scenes/builder.ts';
import { constructedNetwork } from './scenes/constructed.ts';
import { everyKind } from './scenes/everyKind.ts';
import { seeded } from './scenes/random.ts';
import { withChecks } from './scenes/withChecks.ts';

const dutiesOf = (network: Network, said: Pick<Network, 'told' | 'rank'> = {}): number[] =>
  Array.from(checkingRules({ ...network, ...said }, reduceNetwork(network, Float64Array.from(network.coords))));

/** Plain oracle for distances and fixed points alone: one singular value decomposition a rule, at places of its own. */
function plainDuties(network: Network, seed: number): number[] {
  const random = seeded(seed);
  const at = Array.from({ length: network.pointCount }, () => [100 * random(), 100 * random()] as const);
  const rows: number[][] = [];
  return Array.from({ length: network.ruleCount }, (_, r) => {
    const [a, b] = [network.points[4 * r] ?? -1, network.points[4 * r + 1] ?? -1];
    const [dx, dy] = [(at[a]?.[0] ?? 0) - (at[b]?.[0] ?? 0), (at[a]?.[1] ?? 0) - (at[b]?.[1] ?? 0)];
    const row = new Array<number>(2 * network.pointCount).fill(0);
    if (!network.held[a]) row.splice(2 * a, 2, dx, dy);
    if (!network.held[b]) row.splice(2 * b, 2, -dx, -dy);
    const tried = [...rows, row];
    const svd = new SingularValueDecomposition(new Matrix(tried), { autoTranspose: true });
    const least = svd.diagonal[tried.length - 1] ?? 0;
    if (tried.length > 2 * network.pointCount || least < 1e-8 * (svd.diagonal[0] ?? 0)) return 1;
    rows.push(row);
    return 0;
  });
}

/** Random distances between random points, in random order: loose, exact and overdone parts beside each other. */
function randomLinks(seed: number): Network {
  const random = seeded(seed);
  const count = 4 + Math.floor(8 * random());
  const at = Array.from({ length: count }, () => [Math.round(40 * random()), Math.round(40 * random())] as const);
  const pairs = new Map<string, DraftRule>();
  for (let k = 0; k < 2.4 * count; k++) {
    const [a, b] = [Math.floor(count * random()), Math.floor(count * random())].sort((x, y) => x - y) as [
      number,
      number,
    ];
    if (a !== b && !(a === 0 && b === 1)) pairs.set(`${a} ${b}`, distance(a, b, 5 + 30 * random()));
  }
  return networkFrom({ at, held: [0, 1], rules: [...pairs.values()] });
}

describe('duties', () => {
  test('agree with a plain rank, rule by rule, on random links', () => {
    let checking = 0;
    for (let seed = 1; seed <= 150; seed++) {
      const network = randomLinks(seed);
      const told = dutiesOf(network);
      expect(told, `seed ${seed}`).toEqual(plainDuties(network, seed + 1000));
      checking += told.reduce((sum, one) => sum + one, 0);
    }
    // Cases in which nothing were to check would prove nothing.
    expect(checking).toBeGreaterThan(150);
  });

  test('do not change with lengths, with the sketch, or with the order of points', () => {
    const seeds = fc.integer({ min: 1, max: 1e6 });
    fc.assert(
      fc.property(seeds, seeds, (seed, other) => {
        const network = withChecks(everyKind(seed, 3), seed, 4).network;
        const told = dutiesOf(network);
        const random = seeded(other);
        const coords = network.coords.map((v, k) => (network.held[k >> 1] ? v : 200 * random() - 100));
        expect(dutiesOf({ ...network, coords })).toEqual(told);
        const values = network.values.map((v, k) =>
          network.kinds[Math.floor(k / 3)] === RuleKind.distance ? v * 3 : v,
        );
        expect(dutiesOf({ ...network, values })).toEqual(told);
        expect(dutiesOf(turnedRound(network))).toEqual(told);
      }),
      { numRuns: 60 },
    );
  });

  test('every rule of a train that is built point by point places, and all added ones check', () => {
    const network = withChecks(constructedNetwork(7, 60, 0), 7, 25).network;
    const own = constructedNetwork(7, 60, 0).network.ruleCount;
    const told = dutiesOf(network);
    expect(told.slice(0, own).some((one) => one === 1)).toBe(false);
    expect(told.slice(own)).toEqual(new Array(network.ruleCount - own).fill(1));
  });

  test('of two lengths between the same axes the better one places, at the turn of the first', () => {
    const at = [
      [0, 0],
      [40, 0],
      [20, 20],
    ] as const;
    const rules = [distance(2, 0, 28), distance(2, 1, 28), distance(0, 2, 28.05)];
    const network = networkFrom({ at, held: [0, 1], rules });
    expect(dutiesOf(network)).toEqual([0, 0, 1]);
    expect(dutiesOf(network, { rank: Uint8Array.of(1, 1, 0) })).toEqual([1, 0, 0]);
    expect(dutiesOf(network, { rank: Uint8Array.of(1, 1, 0), told: Uint8Array.of(0, 0, 1) })).toEqual([0, 0, 1]);
  });

  test('directions from one centre count as one, and so do fixed directions within a degree', () => {
    const ray = (a: number, angleDeg: number): DraftRule => ({
      kind: RuleKind.ray,
      points: [2, a],
      values: [(angleDeg * Math.PI) / 180],
    });
    const at = [
      [0, 0],
      [40, 0],
      [20, 20],
    ] as const;
    const duties = (...rules: DraftRule[]): number[] => dutiesOf(networkFrom({ at, held: [0, 1], rules }));
    expect(duties(ray(0, 20), ray(0, 50), distance(2, 1, 28))).toEqual([0, 1, 0]);
    expect(duties(ray(0, 20), ray(1, 20.5), distance(2, 1, 28))).toEqual([0, 1, 0]);
    expect(duties(ray(0, 20), ray(1, 201.5), distance(2, 1, 28))).toEqual([0, 0, 1]);
    expect(duties(ray(0, 20), ray(1, 199.5), distance(2, 1, 28))).toEqual([0, 1, 0]);
  });

  test('a rule told to check never places, and no other point is displaced by it', () => {
    const network = constructedNetwork(3, 12, 0).network;
    for (let r = 0; r < network.ruleCount; r++) {
      const told = new Uint8Array(network.ruleCount);
      told[r] = 1;
      expect(dutiesOf(network, { told })).toEqual(Array.from(told));
    }
  });

  test('a swinging figure drawn along the axes has no more placing rules than it has motions taken', () => {
    // A rectangle of six distances, held at one corner: five of them settle its shape, and it can still swing.
    const at = [
      [0, 0],
      [60, 0],
      [60, 30],
      [0, 30],
    ] as const;
    const rules = [distance(0, 1, 60), distance(1, 2, 30), distance(2, 3, 60), distance(3, 0, 30)];
    const crossed = [...rules, distance(0, 2, Math.hypot(60, 30)), distance(1, 3, Math.hypot(60, 30))];
    expect(dutiesOf(networkFrom({ at, held: [0], rules: crossed }))).toEqual([0, 0, 0, 0, 0, 1]);
  });
});

/** The same network with its points listed the other way round. */
function turnedRound(network: Network): Network {
  const last = network.pointCount - 1;
  const coords = new Float64Array(network.coords.length);
  const held = new Uint8Array(network.pointCount);
  for (let i = 0; i <= last; i++) {
    coords.set(network.coords.subarray(2 * i, 2 * i + 2), 2 * (last - i));
    held[last - i] = network.held[i] ?? 0;
  }
  return { ...network, coords, held, points: network.points.map((p) => (p < 0 ? -1 : last - p)) };
}
