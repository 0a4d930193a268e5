/**
 * Gaps in plan against an independent geometry library, on random scenes, to 1e-9 mm.
 *
 * Source of the other values: @flatten-js/core, distances between its circles, segments and polygons.
 */
import Flatten from '@flatten-js/core';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { planGapOf } from '../../solver/clearance/gaps/planGap.ts';
import type { RegionSolid, RingSolid } from '../../solver/clearance/solids/solid.ts';

const heights = { from: 0, to: 1 };
const hundredths = (min: number, max: number) =>
  fc.integer({ min: Math.round(min * 100), max: Math.round(max * 100) }).map((n) => n / 100);

const disc = fc.record({ x: hundredths(-60, 60), y: hundredths(-60, 60), outer: hundredths(0.5, 20) }).map(
  ({ x, y, outer }): RingSolid => ({
    index: 0,
    part: 'disc' as RingSolid['part'], // any id will do
    piece: 'whole',
    role: 'wheel',
    heights,
    shape: 'ring',
    centre: { x: x, y: y },
    inner: 0,
    outer,
  }),
);

/** A many-sided plate about the origin: corners at random radii in order of angle, so that it never crosses itself. */
const polygon = fc.array(hundredths(5, 40), { minLength: 3, maxLength: 9 }).map((radii) =>
  radii.map((r, i): [number, number] => {
    const angle = (2 * Math.PI * i) / radii.length;
    return [r * Math.cos(angle), r * Math.sin(angle)];
  }),
);

const regionOf = (corners: readonly (readonly [number, number])[]): RegionSolid => ({
  index: 1,
  part: 'plate' as RegionSolid['part'], // any id will do
  piece: 'whole',
  role: 'plate',
  heights,
  shape: 'region',
  region: { outer: { kind: 'path', vertices: corners.map(([x, y]) => ({ x, y, bulge: 0 })) }, holes: [] },
});

const circleOf = ({ centre, outer }: RingSolid) => new Flatten.Circle(new Flatten.Point(centre.x, centre.y), outer);

describe('gaps in plan', () => {
  it('of two discs that stand apart', () => {
    fc.assert(
      fc.property(disc, disc, (a, b) => {
        const apart = Math.hypot(a.centre.x - b.centre.x, a.centre.y - b.centre.y) - a.outer - b.outer;
        fc.pre(apart > 0);
        const [distance] = circleOf(a).distanceTo(circleOf(b));
        expect(Math.abs((planGapOf(a, b)?.gap ?? Number.NaN) - distance)).toBeLessThan(1e-9);
      }),
      { numRuns: 500 },
    );
  });

  it('of a disc and a plate with straight sides, from outside and from inside', () => {
    fc.assert(
      fc.property(disc, polygon, (a, corners) => {
        const plate = new Flatten.Polygon();
        plate.addFace(corners.map(([x, y]) => new Flatten.Point(x, y)));
        const centre = new Flatten.Point(a.centre.x, a.centre.y);
        // Distance from the centre to the nearest side, side by side; inside it counts against the gap.
        const sides = corners.map(([x, y], i) => {
          const [nx, ny] = corners[(i + 1) % corners.length] ?? [x, y];
          return new Flatten.Segment(new Flatten.Point(x, y), new Flatten.Point(nx, ny));
        });
        const nearest = Math.min(...sides.map((side) => centre.distanceTo(side)[0]));
        fc.pre(nearest > 1e-6);
        const expected = (plate.contains(centre) ? -nearest : nearest) - a.outer;
        expect(Math.abs((planGapOf(a, regionOf(corners))?.gap ?? Number.NaN) - expected)).toBeLessThan(1e-9);
      }),
      { numRuns: 500 },
    );
  });

  it('of a disc and a wall bounded by arcs', () => {
    fc.assert(
      fc.property(disc, hundredths(5, 30), hundredths(-20, 20), hundredths(-20, 20), (a, radius, x, y) => {
        // A half disc: a straight side and a half circle, bulge 1.
        const wall: RegionSolid = {
          ...regionOf([]),
          region: {
            outer: {
              kind: 'path',
              vertices: [
                { x: x + radius, y, bulge: 1 },
                { x: x - radius, y, bulge: 0 },
              ],
            },
            holes: [],
          },
        };
        const centre = new Flatten.Point(a.centre.x, a.centre.y);
        const arc = new Flatten.Arc(new Flatten.Point(x, y), radius, 0, Math.PI, true);
        const chord = new Flatten.Segment(new Flatten.Point(x - radius, y), new Flatten.Point(x + radius, y));
        const nearest = Math.min(centre.distanceTo(arc)[0], centre.distanceTo(chord)[0]);
        fc.pre(nearest > 1e-6);
        const inside = Math.hypot(a.centre.x - x, a.centre.y - y) < radius && a.centre.y > y;
        const expected = (inside ? -nearest : nearest) - a.outer;
        expect(Math.abs((planGapOf(a, wall)?.gap ?? Number.NaN) - expected)).toBeLessThan(1e-9);
      }),
      { numRuns: 500 },
    );
  });
});
