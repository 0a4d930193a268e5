/**
 * Networks that can be built point by point: each new arbor at the crossing of two distances from earlier ones, 5 to
 * 60 mm long and crossing at more than 25 degrees, as in a movement that is planted one arbor after the other.
 */
import { type DraftRule, distance, networkFrom } from './builder.ts';
import type { KnownNetwork } from './coupled.ts';
import { seeded } from './random.ts';

const LEAST_SINE = Math.sin((25 * Math.PI) / 180);

/** `count` arbors with two rules each on two held ones; every sketch place is `off` mm from the known one. */
export function constructedNetwork(seed: number, count: number, off: number): KnownNetwork {
  const random = seeded(seed);
  const at: [number, number][] = [
    [0, 0],
    [30, 0],
  ];
  const rules: DraftRule[] = [];
  while (at.length < count + 2) {
    // Any earlier arbor, and one that it was placed from: so no chain is longer than a real train of arbors.
    const a = Math.floor(at.length * random());
    const b = a < 2 ? 1 - a : rules[2 * (a - 2) + Math.floor(2 * random())]!.points[1]!; // two distances an arbor
    const heading = 2 * Math.PI * random();
    const length = 5 + 55 * random();
    const [ax, ay] = at[a]!; // drawn below its length
    const [bx, by] = at[b]!; // as above
    const spot: [number, number] = [ax + length * Math.cos(heading), ay + length * Math.sin(heading)];
    const other = Math.hypot(spot[0] - bx, spot[1] - by);
    if (other < 5 || other > 60) continue;
    const cross = (spot[0] - ax) * (spot[1] - by) - (spot[1] - ay) * (spot[0] - bx);
    if (Math.abs(cross) < LEAST_SINE * length * other) continue;
    rules.push(distance(at.length, a, length), distance(at.length, b, other));
    at.push(spot);
  }
  const sketch = at.map(([x, y], i): [number, number] => {
    const angle = 2 * Math.PI * random();
    return i < 2 ? [x, y] : [x + off * Math.cos(angle), y + off * Math.sin(angle)];
  });
  return { network: networkFrom({ at: sketch, held: [0, 1], rules }), known: Float64Array.from(at.flat()) };
}
