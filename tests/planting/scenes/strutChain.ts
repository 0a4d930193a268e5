/** Chains of points, each struck by arcs from two of the points before it, sketched off their known places. */
import { type DraftRule, distance, networkFrom } from './builder.ts';
import type { KnownNetwork } from './coupled.ts';
import { seeded } from './random.ts';

type Spot = [number, number];

/** Arcs cross at 25° or more, as a maker would plan them, and are 8 to 60 mm long. */
const SHARPEST = Math.sin((25 * Math.PI) / 180);

/** `count` points on three held ones, each sketched `off` mm from its known place in a random direction. */
export function strutChain(seed: number, count: number, off: number): KnownNetwork {
  const random = seeded(seed);
  const at: Spot[] = [
    [0, 0],
    [40, 0],
    [15, 35],
  ];
  const rules: DraftRule[] = [];
  while (at.length < count + 3) {
    const recent = Math.min(at.length, 8);
    const [a, b] = [0, 1].map(() => at.length - 1 - Math.floor(random() * recent)) as [number, number];
    const base = at[a] as Spot; // drawn below the length
    const other = at[b] as Spot; // as above
    const spot: Spot = [base[0] + 70 * (random() - 0.5), base[1] + 70 * (random() - 0.5)];
    const arms = [base, other].map(([x, y]) => [spot[0] - x, spot[1] - y] as const);
    const lengths = arms.map(([x, y]) => Math.hypot(x, y));
    const [[ux, uy], [vx, vy]] = arms as [readonly [number, number], readonly [number, number]];
    const [p, q] = lengths as [number, number];
    const isFlat = Math.abs(ux * vy - uy * vx) < SHARPEST * p * q;
    if (a === b || isFlat || Math.min(p, q) < 8 || Math.max(p, q) > 60) continue;
    if (at.some(([x, y]) => Math.hypot(spot[0] - x, spot[1] - y) < 8)) continue;
    rules.push(distance(at.length, a, p), distance(at.length, b, q));
    at.push(spot);
  }
  const sketch = at.map(([x, y], i): Spot => {
    const angle = 2 * Math.PI * random();
    return i < 3 ? [x, y] : [x + off * Math.cos(angle), y + off * Math.sin(angle)];
  });
  return { network: networkFrom({ at: sketch, held: [0, 1, 2], rules }), known: Float64Array.from(at.flat()) };
}
