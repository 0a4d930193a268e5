/**
 * How often coupled networks are recovered from a rough sketch: chains of coupled blocks with 100 points, every point
 * 5 mm off in a random direction, 60 seeds in a row. "Wanted" is the placement that the lengths were taken from.
 *
 * The issue asks for 58 of 60. `npm run speed` prints the number for more seeds and for harder networks.
 */
import { expect, it } from 'vitest';
import { chainedNetwork } from './scenes/chained.ts';
import { recovered } from './scenes/recovered.ts';

it('recovers the wanted placement of at least 58 in 60 coupled networks of 100 points started 5 mm off', () => {
  const count = recovered(60, (seed) => chainedNetwork(seed, 100, 5));
  expect(count.wanted).toBeGreaterThanOrEqual(58);
  // Where another placement was found its rules hold all the same.
  expect(count.hold).toBe(60);
});
