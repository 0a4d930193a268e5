/** Counts how many networks of a family are recovered from their sketches. */
import { plantNetwork } from '../../../solver/planting/kernel/plant.ts';
import type { KnownNetwork } from './coupled.ts';

/** Seeds 1 to `count`: how many plantings hold to 1e-9 mm, and how many of them are the known placement. */
export function recovered(count: number, scene: (seed: number) => KnownNetwork): { wanted: number; hold: number } {
  let wanted = 0;
  let hold = 0;
  for (let seed = 1; seed <= count; seed++) {
    const { network, known } = scene(seed);
    const { coords, missBy } = plantNetwork(network);
    if (missBy.every((miss) => miss <= 1e-9)) hold++;
    if (known.every((v, k) => Math.abs(v - (coords[k] as number)) < 1e-6)) wanted++; // same length
  }
  return { wanted, hold };
}

/** Largest difference of two lists of coordinates. */
export function farthest(a: ArrayLike<number>, b: ArrayLike<number>): number {
  let most = 0;
  for (let k = 0; k < a.length; k++) most = Math.max(most, Math.abs((a[k] as number) - (b[k] as number))); // same length
  return most;
}
