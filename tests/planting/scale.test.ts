/** The same movement from lengths of 0.05 mm to 10 m, and 10 m from the origin. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Movement } from '../../solver/movement/schema.ts';
import { plantMovement } from '../../solver/planting/index.ts';
import { arbor, buildMovement, distance, held, largestMiss, placeOf } from './buildMovement.ts';
import { changedMovement } from './changed.ts';
import { randomMovement } from './randomMovement.ts';

/** All lengths of a movement (points and rules only) times `by`. */
function scaled(movement: Movement, by: number): Movement {
  const point = <T extends { readonly at: readonly [number, number] }>(each: T): T => ({
    ...each,
    at: [each.at[0] * by, each.at[1] * by],
  });
  return {
    ...movement,
    arbors: movement.arbors.map((each) => ({ ...point(each), diameter: each.diameter * by })),
    marks: movement.marks.map(point),
    rules: movement.rules.map((rule): Movement['rules'][number] => {
      if (rule.kind === 'held') return point(rule);
      if (rule.kind === 'distance' || rule.kind === 'radius') return { ...rule, length: rule.length * by };
      if (rule.kind === 'depth') return { ...rule, held: (rule.held ?? 0) * by };
      return rule.kind === 'clearBy' ? { ...rule, gap: rule.gap * by } : rule;
    }),
  };
}

describe('sizes', () => {
  // The shortest lengths of the random movements are 8 mm, the longest some 300 mm.
  for (const by of [0.05 / 8, 0.1, 1, 10, 10_000 / 300]) {
    for (const offset of [0, 10_000]) {
      it(`lengths times ${by.toPrecision(3)}, ${offset / 1000} m from the origin`, () => {
        fc.assert(
          fc.property(fc.integer({ min: 0, max: 2 ** 31 }), fc.integer({ min: 3, max: 20 }), (seed, count) => {
            const known = randomMovement(seed, count);
            const movement = changedMovement(scaled(known.movement, by), {
              angleDeg: 0,
              by: [offset, -offset],
              mirror: false,
            });
            const placed = plantMovement(movement);
            expect(placed.disagreements).toEqual([]);
            expect(placed.freeMotions).toBe(0);
            expect(largestMiss(placed)).toBeLessThan(1e-9);
            // Coordinates of 10 m carry 2e-12 mm each; chains and crossings of 25° multiply it.
            const allowed = Math.max(1e-9, 1e-9 * by) + (offset > 0 ? 1e-8 : 0);
            for (const [id, [x, y]] of known.places) {
              const place = placeOf(placed, id);
              expect(place.state).toBe('planted');
              expect(Math.hypot(place.x - x * by - offset, place.y - y * by + offset)).toBeLessThan(allowed);
            }
          }),
          { numRuns: 40 },
        );
      });
    }
  }
});

describe('arcs that touch', () => {
  const build = (short: number, offset: number, unit: number) =>
    plantMovement(
      buildMovement({
        arbors: [
          arbor('A', offset, offset),
          arbor('B', offset + 57 * unit, offset),
          arbor('P', offset + 30 * unit, offset + unit),
        ],
        rules: [
          held('a', 'A', offset, offset),
          held('b', 'B', offset + 57 * unit, offset),
          distance('1', 'A', 'P', 30 * unit),
          distance('2', 'B', 'P', 27 * unit - short),
        ],
      }),
    );

  for (const unit of [0.01, 1, 100]) {
    for (const offset of [0, 10_000]) {
      it(`at a size of ${57 * unit} mm, ${offset / 1000} m out: just reach, overlap and miss by a thousandth`, () => {
        const touching = build(0, offset, unit);
        expect(touching.disagreements).toEqual([]);
        expect(placeOf(touching, 'P').x).toBeCloseTo(offset + 30 * unit, 8);
        // Touching is no firm place: the first step sideways costs nothing.
        expect(placeOf(touching, 'P').y).toBeCloseTo(offset, 4);

        const over = build(-0.001, offset, unit);
        expect(over.disagreements).toEqual([]);
        expect(placeOf(over, 'P').state).toBe('planted');
        expect(largestMiss(over)).toBeLessThan(1e-9);
        // Half chord of two nearly touching arcs, √(2·r₁·r₂·δ/d): reference G1.
        const chord = Math.sqrt((2 * 30 * 27 * unit * 0.001) / 57);
        expect((placeOf(over, 'P').y - offset) / chord).toBeCloseTo(1, 1);

        const short = build(0.001, offset, unit);
        expect(short.disagreements).toHaveLength(1);
        expect(short.disagreements[0]?.gap).toBeCloseTo(0.001, 9);
        expect(placeOf(short, 'P').state).toBe('contested');
      });
    }
  }
});
