/** What a real hand does to the steps: rounding to the printed figures, and random errors of the settings. */
import { describe, expect, it } from 'vitest';
import { markingSteps } from '../../solver/marking/index.ts';
import type { MarkingOptions } from '../../solver/marking/steps/markingSteps.ts';
import { printedReach, spreadOfSteps } from '../../solver/marking/steps/strikingErrors.ts';
import { everyConstruction } from '../marking/placedByHand.ts';
import { type BarePlate, followSteps } from '../marking/simulatedMaker.ts';
import { stepsText } from '../marking/stepsTold.ts';

const placed = everyConstruction();
const EDGES: BarePlate = { edges: { left: 0, lower: 0, right: 100, upper: 90 } };
const PAIR: BarePlate = { edges: {}, first: [40, 30], base: Math.PI / 2 };
const CASES: readonly (readonly [string, MarkingOptions, BarePlate])[] = [
  ['the edges', { plate: 'base', face: 'up' }, EDGES],
  ['two points', { plate: 'base', face: 'up', datum: { kind: 'pair', first: 'centre', second: 'escape' } }, PAIR],
];

describe.each(CASES)('from %s', (_name, options, plate) => {
  const steps = markingSteps(placed, options).filter((step) => step.kind !== 'unsettled');

  it.each([
    { unit: 'mm', decimals: 3 },
    { unit: 'mm', decimals: 2 },
    { unit: 'mm', decimals: 1 },
  ] as const)('settings rounded as printed ($decimals decimals) stay within the printed ±', (display) => {
    const struck = followSteps(stepsText(placed, { ...options, display }), plate);
    const reach = printedReach(steps, display);
    let worst = 0;
    for (const step of steps) {
      const at = struck.get(step.label) ?? [Number.NaN, Number.NaN];
      const miss = Math.hypot(at[0] - step.place[0], at[1] - step.place[1]);
      // A hundredth more for what the linear reach leaves out at one decimal.
      expect(miss, step.label).toBeLessThanOrEqual((reach.get(step.point) ?? 0) * 1.01 + 1e-9);
      worst = Math.max(worst, miss);
    }
    expect(worst).toBeGreaterThan(0.01 * 10 ** -display.decimals);
  });

  it('random errors of the dividers spread each point as its ellipse says (10,000 trials)', () => {
    const sigma = { length: 0.004, angleDeg: 0.006 };
    const normal = seededNormal(19620401);
    const text = stepsText(placed, { ...options, display: { unit: 'mm', decimals: 10 } });
    const trials = 10_000;
    const spread = new Map(spreadOfSteps(steps, sigma).map((each) => [each.point, each.covariance]));
    const sums = new Map<string, { mahalanobis: number; inside: number }>();
    for (let trial = 0; trial < trials; trial++) {
      const struck = followSteps(
        text,
        plate,
        (setting, isAngle) => setting + normal() * (isAngle ? sigma.angleDeg : sigma.length),
      );
      for (const step of steps) {
        const at = struck.get(step.label) ?? [Number.NaN, Number.NaN];
        const [xx, xy, yy] = spread.get(step.point) ?? [0, 0, 0];
        const det = xx * yy - xy * xy;
        const dx = at[0] - step.place[0];
        const dy = at[1] - step.place[1];
        if (det < 1e-20) continue;
        const squared = (yy * dx * dx - 2 * xy * dx * dy + xx * dy * dy) / det;
        const sum = sums.get(step.point) ?? { mahalanobis: 0, inside: 0 };
        sums.set(step.point, {
          mahalanobis: sum.mahalanobis + squared,
          // 95 % of a plane normal law lie within the square 5.991 (chi-square, two freedoms; published tables).
          inside: sum.inside + (squared < 5.991 ? 1 : 0),
        });
      }
    }
    expect(sums.size).toBeGreaterThanOrEqual(10);
    for (const [point, { mahalanobis, inside }] of sums) {
      // Sum of chi-square with 2 freedoms: mean 2n, standard deviation 2√n; four and a half of them.
      expect(Math.abs(mahalanobis - 2 * trials), point).toBeLessThan(4.5 * 2 * Math.sqrt(trials));
      expect(Math.abs(inside / trials - 0.95), point).toBeLessThan(0.01);
    }
  });
});

/** Normal deviates by Box and Muller from a seeded generator (Park and Miller's minimal standard). */
function seededNormal(seed: number): () => number {
  let state = seed;
  const uniform = () => {
    state = (state * 48271) % 2147483647;
    return state / 2147483647;
  };
  return () => Math.sqrt(-2 * Math.log(uniform())) * Math.cos(2 * Math.PI * uniform());
}
