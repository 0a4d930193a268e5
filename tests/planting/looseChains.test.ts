/** Many loose points: their motions are those of a singular value decomposition, found in the time that they take. */
import { Matrix, SVD } from 'ml-matrix';
import { describe, expect, it } from 'vitest';
import { plantNetwork } from '../../solver/planting/kernel/plant.ts';
import { decompose, LACKING, rowsOf } from '../proof/rank/oracle.ts';
import { distance, networkFrom } from './scenes/builder.ts';
import { seeded } from './scenes/random.ts';

/** A tree of points with `loops` more rules between them, the first point held; every length is as sketched. */
function looseNetwork(count: number, loops: number, seed: number) {
  const random = seeded(seed);
  const at = Array.from({ length: count }, () => [200 * random(), 200 * random()] as const);
  const length = (a: number, b: number): number =>
    Math.hypot((at[a]?.[0] ?? 0) - (at[b]?.[0] ?? 0), (at[a]?.[1] ?? 0) - (at[b]?.[1] ?? 0));
  const pairs = at.slice(1).map((_, i) => [Math.floor(random() * (i + 1)), i + 1] as const);
  for (let n = 0; n < loops; n++) {
    const [a, b] = [Math.floor(random() * count), Math.floor(random() * count)];
    if (a !== b) pairs.push([Math.min(a, b), Math.max(a, b)]);
  }
  return networkFrom({ at, held: [0], rules: pairs.map(([a, b]) => distance(a, b, length(a, b))) });
}

/** Rank of vectors, by their singular values. */
function rankOf(vectors: readonly Float64Array[]): number {
  const { diagonal } = new SVD(new Matrix(vectors.map((each) => Array.from(each))).transpose());
  return diagonal.filter((value) => value > 1e-9 * Math.max(...diagonal)).length;
}

describe('many loose points', () => {
  it('as many motions as a decomposition finds, all different, and none that a rule resists', () => {
    for (let seed = 1; seed <= 12; seed++) {
      const network = looseNetwork(32, seed % 5, seed);
      const result = plantNetwork(network);
      const rules = Array.from({ length: network.ruleCount }, (_, r) => r);
      const resisted = decompose(network, result.coords, rules);
      const free = resisted.values.filter((value) => value < LACKING).length;
      expect(result.freeMotions, `seed ${seed}`).toBe(free);
      expect(free).toBeGreaterThan(24);
      expect(rankOf(result.motions)).toBe(free);
      for (const motion of result.motions) {
        for (const row of rules.flatMap((r) => rowsOf(network, r, result.coords))) {
          const resists = row.reduce(
            (sum, [point, dx, dy]) => sum + dx * (motion[2 * point] ?? 0) + dy * (motion[2 * point + 1] ?? 0),
            0,
          );
          expect(Math.abs(resists)).toBeLessThan(1e-7);
        }
      }
    }
  });

  // Decomposed as a whole this chain takes minutes.
  it('a chain of two thousand points is taken to pieces from its end', () => {
    const result = plantNetwork(looseNetwork(2000, 0, 99));
    expect(result.freeMotions).toBe(1999);
    expect(result.states.filter((state) => state === 1).length).toBe(1999);
  }, 20_000);
});
