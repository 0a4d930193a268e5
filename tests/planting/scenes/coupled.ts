/**
 * Random coupled networks with a known placement: near neighbours joined by just enough distances to settle all.
 *
 * Distances are drawn among near neighbours in random order and kept when their gradient is independent of those kept
 * before (judged at the known placement by orthogonalization), until every point is settled. No solver takes part.
 */
import type { Network } from '../../../solver/planting/network.ts';
import { type DraftRule, distance, networkFrom } from './builder.ts';
import { seeded } from './random.ts';

export interface KnownNetwork {
  readonly network: Network;
  /** The placement that the lengths were taken from. */
  readonly known: Float64Array;
}

/** Part of a unit gradient that must be new for a distance to be kept. */
const NEW = 0.05;

function scatter(count: number, random: () => number): [number, number][] {
  const side = 22 * Math.sqrt(count);
  const at: [number, number][] = [];
  while (at.length < count) {
    const spot: [number, number] = [side * random(), side * random()];
    if (at.every(([x, y]) => Math.hypot(x - spot[0], y - spot[1]) > 9)) at.push(spot);
  }
  return at;
}

/** Pairs of near neighbours in random order. */
function nearPairs(at: readonly (readonly [number, number])[], near: number, random: () => number): [number, number][] {
  const pairs = new Map<number, [number, number]>();
  at.forEach(([x, y], i) => {
    const order = at
      .map(([px, py], j) => ({ j, d: Math.hypot(px - x, py - y) }))
      .sort((a, b) => a.d - b.d)
      .slice(1, near + 1);
    for (const { j } of order) pairs.set(Math.min(i, j) * at.length + Math.max(i, j), [Math.min(i, j), Math.max(i, j)]);
  });
  const list = [...pairs.values()];
  for (let i = list.length - 1; i > 0; i--) {
    const j = Math.floor(random() * (i + 1));
    [list[i], list[j]] = [list[j] as [number, number], list[i] as [number, number]]; // both below the length
  }
  return list;
}

/**
 * A network of `count` points, two of them held, each sketched `off` mm away from its known place in a random direction.
 */
export function coupledNetwork(seed: number, count: number, off: number): KnownNetwork {
  const random = seeded(seed);
  const at = scatter(count, random);
  const held = [
    0,
    at.map(([x, y], i) => ({ i, d: Math.hypot(x - at[0]![0], y - at[0]![1]) })).sort((a, b) => b.d - a.d)[0]!.i,
  ]; // at least two points
  const rules: DraftRule[] = [];
  const basis: Float64Array[] = [];
  for (const [a, b] of nearPairs(at, 8, random)) {
    if (basis.length === 2 * (count - held.length)) break;
    if (held.includes(a) && held.includes(b)) continue;
    const [dx, dy] = [at[b]![0] - at[a]![0], at[b]![1] - at[a]![1]]; // pairs name points
    const length = Math.hypot(dx, dy);
    const row = new Float64Array(2 * count);
    const put = (i: number, sign: number): void => {
      if (!held.includes(i)) row.set([(sign * dx) / length, (sign * dy) / length], 2 * i);
    };
    put(a, -1);
    put(b, 1);
    for (const unit of [...basis, ...basis]) {
      let dot = 0;
      for (let k = 0; k < row.length; k++) dot += row[k]! * unit[k]!; // same length
      for (let k = 0; k < row.length; k++) row[k]! -= dot * unit[k]!; // as above
    }
    const rest = Math.hypot(...row);
    if (rest < NEW) continue;
    basis.push(row.map((v) => v / rest));
    rules.push(distance(a, b, length));
  }
  const sketch = at.map(([x, y], i): [number, number] => {
    const angle = 2 * Math.PI * random();
    return held.includes(i) ? [x, y] : [x + off * Math.cos(angle), y + off * Math.sin(angle)];
  });
  return { network: networkFrom({ at: sketch, held, rules }), known: Float64Array.from(at.flat()) };
}
