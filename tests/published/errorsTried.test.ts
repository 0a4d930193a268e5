/**
 * Errors of making against trials made by another program: `errorsTried.py` (numpy, scipy) with the movement
 * `errorsTried.json` written out by hand there; its numbers stand in `errorsTriedValues.json`.
 *
 * A spread from n trials is known to σ/√(2n), a share p to √(p(1−p)/n) (any handbook of statistics); four of both
 * programs' together are allowed.
 */
import { describe, expect, it } from 'vitest';
import { findErrors } from '../../solver/made/errors/index.ts';
import { plantMovement } from '../../solver/planting/index.ts';
import { movementOfFile } from '../support/movements.ts';
import values from './errorsTriedValues.json' with { type: 'json' };

const TRIALS = 8000;
const movement = movementOfFile('tests/published/errorsTried.json');
const placed = plantMovement(movement);
const errors = { lengths: 0.04, holes: 0.03, bores: 0.012, tips: 0.03 };
const found = findErrors(placed, { errors, trials: TRIALS, seed: 3 });

const sigmas = Math.sqrt(1 / (2 * values.trials) + 1 / (2 * TRIALS));
function expectShare(ours: number, theirs: number): void {
  const known = Math.sqrt(theirs * (1 - theirs) * (1 / values.trials + 1 / TRIALS));
  expect(Math.abs(ours - theirs)).toBeLessThan(4 * known);
}

describe('trials against numpy and scipy', () => {
  it('every trial is planted, the depth that only checks among them', () => {
    expect(found.planted).toBe(TRIALS);
    expect(found.checks.map(({ rule }) => rule)).toEqual(['tide-lunar']);
  });

  for (const [rule, theirs] of Object.entries(values.depths)) {
    it(`depth ${rule}: planned, spread, shares that bind with and without the bearings giving way`, () => {
      const depth = found.depths.find((each) => each.rule === rule);
      expect(depth?.planned).toBeCloseTo(theirs.planned, 6);
      // An involute pair has no play at m(N + n)/2, and the allowance is 0.02.
      expect(depth?.window?.deepest).toBeCloseTo(theirs.planned - 0.02, 6);
      expect(Math.abs((depth?.triedPlusMinus ?? 0) / 2 / theirs.sigma - 1)).toBeLessThan(4 * sigmas);
      expect(Math.abs((depth?.plusMinus ?? 0) / 2 / theirs.sigma - 1)).toBeLessThan(4 * sigmas);
      expectShare(depth?.tight ?? -1, theirs.tight);
      expectShare((depth?.tight ?? -1) + (depth?.bearingsGive ?? -1), theirs.bare);
      expect(depth?.loose).toBe(0);
    });
  }

  it('the gap of the post: planned with shake, spread, share too close', () => {
    const gap = found.gaps.find(({ parts }) => parts.includes('p1') && parts.includes('upper-wheel'));
    expect(gap?.planned).toBeCloseTo(values.gap.planned, 6);
    expect(Math.abs((gap?.triedPlusMinus ?? 0) / 2 / values.gap.sigma - 1)).toBeLessThan(4 * sigmas);
    expectShare(gap?.tooClose ?? -1, values.gap.tooClose);
  });

  it('the mark of the upper arbor: its ellipse without holes', () => {
    const marks = findErrors(placed, { errors: { ...errors, holes: 0, bores: 0, tips: 0 }, trials: TRIALS, seed: 4 });
    const upper = marks.places.find(({ id }) => id === 'upper');
    const [xx = 0, xy = 0, , yy = 0] = values.upperMark.covariance;
    const [a, b, c] = upper?.covariance ?? [0, 0, 0];
    expect(Math.abs(a / xx - 1)).toBeLessThan(8 * sigmas);
    expect(Math.abs(c / yy - 1)).toBeLessThan(8 * sigmas);
    expect(Math.abs(b - xy)).toBeLessThan(8 * sigmas * Math.sqrt(xx * yy));
  });
});
