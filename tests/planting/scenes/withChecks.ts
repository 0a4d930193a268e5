/** A known network with more distances than it needs, all of which agree at the known placement. */
import { RuleKind } from '../../../solver/planting/network.ts';
import type { KnownNetwork } from './coupled.ts';
import { seeded } from './random.ts';

/** Longest and shortest distance that is added, mm. */
const LONGEST = 60;
const SHORTEST = 5;

/** Adds `count` distances between points that have none yet. */
export function withChecks({ network, known }: KnownNetwork, seed: number, count: number): KnownNetwork {
  const random = seeded(seed * 7919 + 13);
  const { pointCount, ruleCount } = network;
  const at = (i: number): [number, number] => [known[2 * i] as number, known[2 * i + 1] as number]; // below the count
  const nameOf = (a: number, b: number): number => Math.min(a, b) * pointCount + Math.max(a, b);
  const joined = new Set<number>();
  for (let r = 0; r < ruleCount; r++) {
    joined.add(nameOf(network.points[4 * r] as number, network.points[4 * r + 1] as number));
  } // two points a distance
  const added: [number, number, number][] = [];
  for (let tries = 0; added.length < count && tries < 5000; tries++) {
    const [a, b] = [Math.floor(random() * pointCount), Math.floor(random() * pointCount)];
    const length = Math.hypot(at(a)[0] - at(b)[0], at(a)[1] - at(b)[1]);
    const bothHeld = network.held[a] === 1 && network.held[b] === 1;
    if (a === b || bothHeld || length > LONGEST || length < SHORTEST || joined.has(nameOf(a, b))) continue;
    joined.add(nameOf(a, b));
    added.push([a, b, length]);
  }
  const total = ruleCount + added.length;
  const more = {
    ...network,
    ruleCount: total,
    kinds: new Uint8Array(total).fill(RuleKind.distance),
    points: new Int32Array(4 * total).fill(-1),
    values: new Float64Array(3 * total),
  };
  more.kinds.set(network.kinds);
  more.points.set(network.points);
  more.values.set(network.values);
  added.forEach(([a, b, length], k) => {
    more.points.set([a, b], 4 * (ruleCount + k));
    more.values[3 * (ruleCount + k)] = length;
  });
  return { network: more, known };
}
