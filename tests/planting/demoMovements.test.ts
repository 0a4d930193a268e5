/** Whole movements as a maker would draw them. Lengths are checked against the wheels' own sums, places by hand. */
import { describe, expect, it } from 'vitest';
import { plantMovement } from '../../solver/planting/index.ts';
import { largestMiss, placeOf, pointId, ruleOf } from './buildMovement.ts';
import { drum, goingTrain, pillaredCase } from './demoMovements.ts';
import { stateSaid } from './said.ts';

describe('a drum', () => {
  const placed = plantMovement(drum());

  it('is planted entirely', () => {
    expect(stateSaid(placed)).toBe('9 planted.');
    expect(largestMiss(placed)).toBeLessThan(1e-9);
  });

  it('stands where its wheels say', () => {
    const [first, second, twin] = [placeOf(placed, 'first'), placeOf(placed, 'second'), placeOf(placed, 'twin')];
    expect(Math.hypot(first.x, first.y)).toBeCloseTo(0.6 * 39, 9); // (60 + 18) / 2 teeth of module 0.6
    expect(first.y / first.x).toBeCloseTo(Math.tan(Math.PI / 6), 9);
    expect(Math.hypot(second.x, second.y)).toBeCloseTo(31.58, 9);
    expect(Math.hypot(second.x - first.x, second.y - first.y)).toBeCloseTo(0.6 * 36 + 0.05, 9);
    expect([twin.x, twin.y]).toEqual([-first.x, -first.y]);
    // Inside the shell of radius 50, 2 mm clear of a post of radius 3, at 30° − 40°.
    const post = placeOf(placed, 'P1');
    expect(Math.hypot(post.x, post.y)).toBeCloseTo(45, 9);
    expect((Math.atan2(post.y, post.x) * 180) / Math.PI).toBeCloseTo(-10, 9);
    const next = placeOf(placed, 'P2');
    expect((Math.atan2(next.y, next.x) * 180) / Math.PI).toBeCloseTo(110, 9);
  });

  it('is built in an order in which every step stands on earlier ones', () => {
    const there = new Set<string>();
    for (const step of placed.order) {
      const own = new Set<string>(step.points);
      for (const id of step.points) {
        for (const hung of placeOf(placed, id).hangsOn) expect(there.has(hung)).toBe(false);
      }
      for (const id of own) there.add(id);
    }
    expect(there.size).toBe(9);
    expect(placeOf(placed, 'centre').placedBy).toEqual(['datum']);
    expect(placeOf(placed, 'second').placedBy).toEqual(['d2', 'd3']);
    expect(placeOf(placed, 'twin').placedBy).toEqual(['o']);
    expect(placeOf(placed, 'twin').movedBy[0]).toBeCloseTo(0.01, 12);
  });

  it('shows three distances of a depth side by side, and carries each ± on', () => {
    expect(ruleOf(placed, 'd3')).toMatchObject({ length: 31.58, measured: 31.58, plusMinus: 0.02, role: 'places' });
    expect(ruleOf(placed, 'd3')?.calculated).toBeCloseTo(31.5, 9);
    // The twin is as uncertain as its model, turned half round: the same ellipse.
    const [first, twin] = [placeOf(placed, 'first').spread, placeOf(placed, 'twin').spread];
    expect(twin?.covariance[0]).toBeCloseTo(first?.covariance[0] ?? 9, 15);
    expect(twin?.covariance[1]).toBeCloseTo(first?.covariance[1] ?? 9, 15);
    expect(placed.plusMinusBetween(pointId('first'), pointId('twin'))).toBeCloseTo(0.06, 12);
  });
});

describe('a case with pillars', () => {
  it('tells that three rules between two arbors are one too many, and the posts stand in the corners', () => {
    const placed = plantMovement(pillaredCase());
    // 3 mm of wall, 2 mm of gap and 4 mm of post.
    expect(placeOf(placed, 'lowerLeft')).toMatchObject({ state: 'planted' });
    for (const [id, x, y] of [
      ['lowerLeft', 9, 9],
      ['lowerRight', 111, 9],
      ['upperLeft', 9, 131],
      ['upperRight', 111, 131],
    ] as const) {
      expect(placeOf(placed, id).x).toBeCloseTo(x, 9);
      expect(placeOf(placed, id).y).toBeCloseTo(y, 9);
    }
    expect(placeOf(placed, 'lunar').y).toBeCloseTo(23, 9);
    expect(placed.disagreements).toEqual([]);
    expect(stateSaid(placed)).toBe('7 planted.');
  });
});

describe('a going train', () => {
  it('is planted up the middle line', () => {
    const placed = plantMovement(goingTrain(false));
    expect(stateSaid(placed)).toBe('5 planted.');
    expect(placeOf(placed, 'centre').x).toBeCloseTo(40, 9);
    expect(placeOf(placed, 'centre').y).toBeCloseTo(20 + 41.6, 9); // (96 + 8) / 2 teeth of module 0.8
    expect(placeOf(placed, 'escape').y).toBeCloseTo(20 + 41.6 + 45, 9);
  });

  it('a drilled arbor stays, the rest is planted about it, and its own rules check', () => {
    const placed = plantMovement(goingTrain(true));
    const [centre, third] = [placeOf(placed, 'centre'), placeOf(placed, 'third')];
    expect([centre.x, centre.y]).toEqual([40.02, 61.63]);
    expect(Math.hypot(third.x - centre.x, third.y - centre.y)).toBeCloseTo(28.8, 9);
    expect(third.state).toBe('planted');
    // Both of its rules check now; a hole 0.03 off is within what careful hand work leaves.
    expect(placed.disagreements).toEqual([]);
    expect(['d1', 'middle'].map((id) => ruleOf(placed, id)?.role)).toEqual(['checks', 'checks']);
    expect(ruleOf(placed, 'd1')?.missBy).toBeCloseTo(Math.hypot(0.02, 41.63) - 41.6, 9);
    // The drilled place's own ±, and the depth's.
    expect(placed.plusMinusBetween(pointId('great'), pointId('centre'))).toBeCloseTo(0.02, 4);
    expect(placed.plusMinusBetween(pointId('centre'), pointId('third'))).toBeCloseTo(0.04, 12);
  });
});
