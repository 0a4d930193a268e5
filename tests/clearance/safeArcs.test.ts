import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { nearestSafeAngle, type Obstacle, safeArcs, surplusAt } from '../../solver/clearance/safe/safeArcs.ts';
import type { RegionSolid, RingSolid, Solid } from '../../solver/clearance/solids/solid.ts';

const TURN = 2 * Math.PI;
const heights = { from: 0, to: 1 };
const hundredths = (min: number, max: number): fc.Arbitrary<number> =>
  fc.integer({ min: Math.round(min * 100), max: Math.round(max * 100) }).map((n) => n / 100);

const ring: fc.Arbitrary<Solid> = fc
  .record({ x: hundredths(-40, 40), y: hundredths(-40, 40), outer: hundredths(1, 15), hole: fc.boolean() })
  .map(
    ({ x, y, outer, hole }): RingSolid => ({
      index: 0,
      part: 'w' as RingSolid['part'],
      piece: 'whole',
      role: 'wheel',
      heights,
      shape: 'ring',
      centre: { x: x, y: y },
      inner: hole ? outer * 0.8 : 0,
      outer,
    }),
  );

const wall: fc.Arbitrary<Solid> = fc
  .record({
    x: hundredths(-40, 40),
    y: hundredths(-40, 40),
    w: hundredths(2, 30),
    h: hundredths(2, 30),
    bulge: hundredths(0, 0.4),
  })
  .map(
    ({ x, y, w, h, bulge }): RegionSolid => ({
      index: 0,
      part: 'wall' as RegionSolid['part'],
      piece: 'whole',
      role: 'wall',
      heights,
      shape: 'region',
      region: {
        outer: {
          kind: 'path',
          vertices: [
            { x, y, bulge },
            { x: x + w, y, bulge: 0 },
            { x: x + w, y: y + h, bulge: 0 },
            { x, y: y + h, bulge: 0 },
          ],
        },
        holes: [],
      },
    }),
  );

const obstacles: fc.Arbitrary<Obstacle[]> = fc.array(
  fc.record({ solid: fc.oneof(ring, wall), gap: hundredths(0, 1) }),
  { maxLength: 6 },
);
const slide = fc
  .record({ x: hundredths(-5, 5), y: hundredths(-5, 5), radius: hundredths(1, 45), partRadius: hundredths(0.5, 4) })
  .map(({ x, y, radius, partRadius }) => ({ centre: { x, y }, radius, partRadius }));

describe('safe arcs of a sliding post', () => {
  it('agree with dense sampling: safe inside, not safe outside', () => {
    fc.assert(
      fc.property(slide, obstacles, (circle, around) => {
        const arcs = safeArcs(circle, around);
        for (let i = 0; i < 720; i++) {
          const angle = (i / 720) * TURN;
          const surplus = surplusAt(circle, around, angle);
          if (Math.abs(surplus) < 1e-7) continue;
          const covered = arcs.some(({ start, sweep }) => (((angle - start) % TURN) + TURN) % TURN <= sweep);
          expect(covered).toBe(surplus > 0);
        }
      }),
      { numRuns: 300 },
    );
  });

  it('begin and end exactly at the stated gap', () => {
    fc.assert(
      fc.property(slide, obstacles, (circle, around) => {
        for (const { start, sweep } of safeArcs(circle, around)) {
          if (sweep >= TURN) continue;
          expect(Math.abs(surplusAt(circle, around, start))).toBeLessThan(1e-9);
          expect(Math.abs(surplusAt(circle, around, start + sweep))).toBeLessThan(1e-9);
        }
      }),
      { numRuns: 300 },
    );
  });

  it('the nearest safe angle is the wanted one, or an end that no other safe angle beats', () => {
    fc.assert(
      fc.property(slide, obstacles, hundredths(0, 6.28), (circle, around, wanted) => {
        const arcs = safeArcs(circle, around);
        const nearest = nearestSafeAngle(arcs, wanted);
        if (nearest === undefined) {
          expect(arcs).toEqual([]);
          return;
        }
        const away = (angle: number): number => Math.abs(((((angle - wanted) % TURN) + 1.5 * TURN) % TURN) - TURN / 2);
        expect(surplusAt(circle, around, nearest)).toBeGreaterThan(-1e-9);
        for (let i = 0; i < 360; i++) {
          const angle = (i / 360) * TURN;
          if (away(angle) < away(nearest) - 1e-9) expect(surplusAt(circle, around, angle)).toBeLessThan(1e-9);
        }
      }),
      { numRuns: 200 },
    );
  });
});
