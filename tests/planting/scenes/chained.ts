/**
 * Chains of coupled blocks with a known placement: rings of three to six points, each point with a strut to a point of
 * an earlier ring. No point of a ring has two loci before the others are placed, so each ring is solved as a block.
 *
 * Lengths are between 5 and 60 mm, and a ring is kept when its Jacobian at the known places has no singular value below
 * `WELL_BRACED` (judged by the library's decomposition; no planting takes part).
 */
import { Matrix, SVD } from 'ml-matrix';
import { type DraftRule, distance, networkFrom } from './builder.ts';
import type { KnownNetwork } from './coupled.ts';
import { seeded } from './random.ts';

/** Smallest singular value of a kept ring: about the sine of a crossing at 25 degrees shared among its points. */
const WELL_BRACED = 0.25;
type Spot = [number, number];

const gap = (a: Spot, b: Spot): number => Math.hypot(a[0] - b[0], a[1] - b[1]);

interface Ring {
  readonly spots: Spot[];
  readonly rules: DraftRule[];
}

function tryRing(at: readonly Spot[], size: number, random: () => number): Ring | undefined {
  const first = at.length;
  const recent = Array.from({ length: Math.min(first, 8) }, (_, k) => first - 1 - k);
  const base = at[recent[Math.floor(random() * Math.min(3, recent.length))]!]!; // drawn below its length
  const heading = 2 * Math.PI * random();
  const centre: Spot = [base[0] + 30 * Math.cos(heading), base[1] + 30 * Math.sin(heading)];
  const spots: Spot[] = [];
  const turn = 2 * Math.PI * random();
  for (let k = 0; k < size; k++) {
    const angle = turn + (2 * Math.PI * (k + 0.5 * (random() - 0.5))) / size;
    const radius = 14 + 10 * random();
    spots.push([centre[0] + radius * Math.cos(angle), centre[1] + radius * Math.sin(angle)]);
  }
  if (spots.some((s) => at.some((p) => gap(s, p) < 8))) return undefined;
  const rules: DraftRule[] = [];
  spots.forEach((spot, k) => {
    const next = (k + 1) % size;
    rules.push(distance(first + k, first + next, gap(spot, spots[next]!))); // within the ring
    const strut = recent[Math.floor(random() * recent.length)]!; // as above
    rules.push(distance(first + k, strut, gap(spot, at[strut]!))); // placed before
  });
  if (rules.some(({ values }) => values![0]! < 5 || values![0]! > 60)) return undefined; // distances have a value
  return smallestSingularValue([...at, ...spots], first, rules) < WELL_BRACED ? undefined : { spots, rules };
}

function smallestSingularValue(at: readonly Spot[], first: number, rules: readonly DraftRule[]): number {
  const matrix = Matrix.zeros(rules.length, rules.length);
  rules.forEach(({ points, values }, row) => {
    const [a, b] = points as [number, number]; // distances join two points
    const unit = [(at[a]![0] - at[b]![0]) / values![0]!, (at[a]![1] - at[b]![1]) / values![0]!]; // they name places
    for (const [i, sign] of [
      [a, 1],
      [b, -1],
    ] as const) {
      if (i < first) continue;
      matrix.set(row, 2 * (i - first), sign * unit[0]!);
      matrix.set(row, 2 * (i - first) + 1, sign * unit[1]!);
    }
  });
  return Math.min(
    ...new SVD(matrix, { computeLeftSingularVectors: false, computeRightSingularVectors: false }).diagonal,
  );
}

/** A chain with at least `count` unknown points (the last ring is whole), each sketched `off` mm from its known place. */
export function chainedNetwork(seed: number, count: number, off: number): KnownNetwork & { readonly blocks: number } {
  const random = seeded(seed);
  const at: Spot[] = [
    [0, 0],
    [40, 0],
    [15, 35],
  ];
  const rules: DraftRule[] = [];
  let blocks = 0;
  while (at.length < count + 3) {
    const size = 3 + Math.floor(4 * random());
    let ring: Ring | undefined;
    for (let tries = 0; !ring && tries < 400; tries++) ring = tryRing(at, size, random);
    if (!ring) continue;
    at.push(...ring.spots);
    rules.push(...ring.rules);
    blocks++;
  }
  const sketch = at.map(([x, y], i): Spot => {
    const angle = 2 * Math.PI * random();
    return i < 3 ? [x, y] : [x + off * Math.cos(angle), y + off * Math.sin(angle)];
  });
  return { network: networkFrom({ at: sketch, held: [0, 1, 2], rules }), known: Float64Array.from(at.flat()), blocks };
}
