/**
 * Error propagation of a planted point against values computed outside the project.
 *
 * Source: values G2 and G3 of SOURCES.md (closed forms for a point fixed by two distances, by radius and distance, and by
 * radius and angle), derived there with mpmath to 60 digits and printed to the digits below; the behaviour (the ellipse
 * grows as the crossing angle leaves 90°) is published in "Mathematical considerations pertaining to the accuracy of
 * position location and navigation systems". Standard deviations there; a movement's ± is two of them.
 */
import { describe, expect, it } from 'vitest';
import { plantMovement } from '../../solver/planting/index.ts';
import { arbor, buildMovement, placeOf, pointId, type RuleInput } from '../planting/buildMovement.ts';

const DEGREES = 180 / Math.PI;

interface Case {
  readonly name: string;
  readonly a: readonly [number, number];
  readonly b: readonly [number, number];
  readonly sketch: readonly [number, number];
  /** Distances from A and B with their standard deviations. */
  readonly d: readonly [number, number];
  readonly s: readonly [number, number];
  /** Standard deviation of A and B in x and in y. */
  readonly ground?: number;
  readonly place: readonly [number, number];
  /** Crossing angle (acute), degrees. */
  readonly angle: number;
  readonly varX: number;
  readonly varY: number;
  readonly cov: number;
  readonly major: number;
  readonly minor: number;
}

const CASES: readonly Case[] = [
  {
    name: 'G.cov.1 right angle',
    a: [0, 0],
    b: [50, 0],
    sketch: [20, 20],
    d: [30, 40],
    s: [0.01, 0.01],
    place: [18, 24],
    angle: 90,
    varX: 1e-4,
    varY: 1e-4,
    cov: 0,
    major: 0.01,
    minor: 0.01,
  },
  {
    name: 'G.cov.2 unequal',
    a: [0, 0],
    b: [50, 0],
    sketch: [20, 20],
    d: [30, 40],
    s: [0.01, 0.02],
    place: [18, 24],
    angle: 90,
    varX: 0.000292,
    varY: 0.000208,
    cov: -0.000144,
    major: 0.02,
    minor: 0.01,
  },
  {
    name: 'G.cov.3 flat triangle',
    a: [0, 0],
    b: [60, 0],
    sketch: [30, 8],
    d: [31, 31],
    s: [0.01, 0.01],
    place: [30, 7.81024967591],
    angle: 180 - 150.814899,
    varX: 5.33888888889e-5,
    varY: 0.000787704918033,
    cov: 0,
    major: 0.02806608127,
    minor: 0.007306770072,
  },
  {
    name: 'G.cov.4 narrow angle',
    a: [0, 0],
    b: [8, 0],
    sketch: [-4, 30],
    d: [30, 32],
    s: [0.01, 0.01],
    place: [-3.75, 29.7647022495],
    angle: 14.3615116,
    varX: 0.00300625,
    varY: 0.000244543650794,
    cov: 0.000756716372004,
    major: 0.05656854249,
    minor: 0.007126966451,
  },
  {
    name: 'G.cov.5 ground not exact',
    a: [0, 0],
    b: [50, 0],
    sketch: [20, 20],
    d: [30, 40],
    s: [0.01, 0.01],
    ground: 0.005,
    place: [18, 24],
    angle: 90,
    varX: 0.000125,
    varY: 0.000125,
    cov: 0,
    major: 0.01118033989,
    minor: 0.01118033989,
  },
  {
    name: 'G.cov.6 radius and distance',
    a: [0, 0],
    b: [70, 0],
    sketch: [38, 24],
    d: [45, 40],
    s: [0.005, 0.01],
    place: [38.0357142857, 24.0475453794],
    angle: 180 - 110.74238,
    varX: 4.29846938776e-5,
    varY: 9.99433458247e-5,
    cov: -3.79140255226e-5,
    major: 0.01090334118,
    minor: 0.004903589593,
  },
];

function planted(each: Case) {
  const ground = each.ground === undefined ? {} : { plusMinus: 2 * each.ground };
  const rules: RuleInput[] = [
    { kind: 'held', id: 'a', point: 'A', at: [...each.a], ...ground },
    { kind: 'held', id: 'b', point: 'B', at: [...each.b], ...ground },
    { kind: 'radius', id: 'da', point: 'P', centre: 'A', length: each.d[0], plusMinus: 2 * each.s[0] },
    { kind: 'distance', id: 'db', points: ['B', 'P'], length: each.d[1], plusMinus: 2 * each.s[1] },
  ];
  return plantMovement(
    buildMovement({ arbors: [arbor('A', ...each.a), arbor('B', ...each.b), arbor('P', ...each.sketch)], rules }),
  );
}

/** Printed to ten significant digits or more; each must agree in nine of them, against the size of the whole matrix. */
const near = (found: number | undefined, printed: number, scale: number): void =>
  expect(Math.abs((found ?? Number.NaN) - printed) / scale).toBeLessThan(1e-9);

describe('covariance of a planted point', () => {
  for (const each of CASES) {
    it(each.name, () => {
      const place = placeOf(planted(each), 'P');
      expect(place.x).toBeCloseTo(each.place[0], 9);
      expect(place.y).toBeCloseTo(each.place[1], 9);
      expect((place.crossingAngle ?? 0) * DEGREES).toBeCloseTo(each.angle, 5);
      const scale = each.varX + each.varY;
      near(place.spread?.covariance[0], each.varX, scale);
      near(place.spread?.covariance[1], each.cov, scale);
      near(place.spread?.covariance[2], each.varY, scale);
      near(place.spread?.major, each.major, each.major);
      near(place.spread?.minor, each.minor, each.minor);
      // Azimuth of the major axis: half of atan2(2·cov, var x − var y); none where the ellipse is a circle.
      if (each.major - each.minor > 1e-9) {
        const azimuth = 0.5 * Math.atan2(2 * each.cov, each.varX - each.varY);
        expect(Math.sin((place.spread?.azimuth ?? 9) - azimuth)).toBeCloseTo(0, 7);
      }
    });
  }

  it('gives the 95 % ellipse by the χ² table with two freedoms (5.991: published in every table)', () => {
    const spread = placeOf(planted(CASES[3] as Case), 'P').spread; // the fourth case is there
    expect(((spread?.major95 ?? 0) / (spread?.major ?? 1)) ** 2).toBeCloseTo(5.991, 3);
    expect(((spread?.minor95 ?? 0) / (spread?.minor ?? 1)) ** 2).toBeCloseTo(5.991, 3);
  });

  it('carries radius and bearing: R = 45 ± 0.005, φ = 33° ± 1 arcmin (G3)', () => {
    const placed = plantMovement(
      buildMovement({
        arbors: [arbor('O', 0, 0), arbor('P', 40, 20)],
        rules: [
          { kind: 'held', id: 'o', point: 'O', at: [0, 0] },
          { kind: 'radius', id: 'r', point: 'P', centre: 'O', length: 45, plusMinus: 0.01 },
          { kind: 'bearing', id: 'b', point: 'P', centre: 'O', angle: 33, plusMinus: 2 / 60 },
        ],
      }),
    );
    const place = placeOf(placed, 'P');
    expect(place.x).toBeCloseTo(37.740175557544, 11);
    expect(place.y).toBeCloseTo(24.508756575676, 11);
    near(place.spread?.covariance[0], 6.8411244831e-5, 1e-4);
    near(place.spread?.covariance[1], -6.68474549509e-5, 1e-4);
    near(place.spread?.covariance[2], 0.000127936053799, 1e-4);
  });

  it('gives back the stated ± of a distance that was used, and the two grounds of a distance that was not', () => {
    const placed = planted(CASES[3] as Case); // the fourth case is there
    expect(placed.plusMinusBetween(pointId('A'), pointId('P'))).toBeCloseTo(0.02, 10);
    expect(placed.plusMinusBetween(pointId('P'), pointId('B'))).toBeCloseTo(0.02, 10);
    expect(placed.plusMinusBetween(pointId('A'), pointId('B'))).toBeUndefined();
  });
});
