/**
 * Random networks planted by us and by a general solver: scipy.optimize.least_squares (trust region, numerical
 * derivatives), started from the same sketch. Places agree to 1e-7 mm wherever the general solver found a placement.
 *
 * Source: SciPy, run by the system's Python. The networks are started 0.2 mm off, so that both look for one placement.
 */
import { execFileSync } from 'node:child_process';
import { describe, expect, it } from 'vitest';
import { plantNetwork } from '../../solver/planting/kernel/plant.ts';
import type { Network } from '../../solver/planting/network.ts';
import { bracedNetwork } from '../planting/scenes/braced.ts';
import { chainedNetwork } from '../planting/scenes/chained.ts';
import { constructedNetwork } from '../planting/scenes/constructed.ts';

interface Answer {
  readonly coords: readonly number[];
  readonly worst: number;
}

/** Python that has SciPy on every machine these tests are meant for (Debian's own). */
const PYTHON = '/usr/bin/python3';

function askScipy(networks: readonly Network[]): Answer[] {
  const asked = networks.map((network) => ({
    coords: Array.from(network.coords),
    held: Array.from(network.held),
    rules: Array.from({ length: network.ruleCount }, (_, r) => [
      network.points[4 * r],
      network.points[4 * r + 1],
      network.values[3 * r],
    ]),
  }));
  const script = new URL('scipyPlanting.py', import.meta.url).pathname;
  const said = execFileSync(PYTHON, [script], { input: JSON.stringify(asked), maxBuffer: 1 << 26, encoding: 'utf8' });
  return JSON.parse(said) as Answer[]; // written by the script beside this test
}

const seeds = [1, 2, 3, 4, 5, 6, 7, 8, 9, 10];
const kinds: readonly (readonly [string, readonly Network[]])[] = [
  ['built point by point, 20 arbors', seeds.map((s) => constructedNetwork(s, 20, 0.2).network)],
  ['chained blocks, 20 points', seeds.map((s) => chainedNetwork(s, 20, 0.2).network)],
  ['one braced block, 20 points', seeds.map((s) => bracedNetwork(s, 4, 5, 0.2).network)],
];

describe('places against scipy.optimize.least_squares', () => {
  for (const [name, networks] of kinds) {
    it(name, () => {
      const answers = askScipy(networks);
      expect(answers.filter(({ worst }) => worst < 1e-9).length).toBeGreaterThanOrEqual(8);
      networks.forEach((network, k) => {
        const { coords, worst } = answers[k] as Answer; // one a network
        const result = plantNetwork(network);
        expect(Math.max(...result.missBy)).toBeLessThanOrEqual(1e-9);
        if (worst > 1e-9) return;
        const off = Math.max(...coords.map((v, i) => Math.abs(v - (result.coords[i] as number)))); // same length
        expect(off).toBeLessThan(1e-7);
      });
    });
  }
});
