import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { ArborId } from '../../solver/movement/ids.ts';
import { planetSpacing } from '../../solver/train/turning/planets.ts';
import { checkRings } from '../../solver/train/turning/ringClosure.ts';
import type { DrawnWheel } from '../teeth/twoWheels.ts';
import { bentRing, independentMiss, ringMovement, type Spots, spots } from './ringSketch.ts';
import { sketchMovement } from './turningMovement.ts';

describe('closing of rings against a construction that only knows how two wheels mesh', () => {
  it('rings of 4, 6 and 8 outside wheels: the same miss to 1e-9 of a tooth (property)', () => {
    let compared = 0;
    fc.assert(
      fc.property(
        fc.constantFrom(4, 6, 8),
        fc.array(fc.integer({ min: 8, max: 90 }), { minLength: 8, maxLength: 8 }),
        fc.array(fc.integer({ min: -40, max: 40 }), { minLength: 8, maxLength: 8 }),
        fc.double({ min: 0, max: 6, noNaN: true }),
        (size, counts, bends, angle) => {
          const teeth = counts.slice(0, size);
          // Near a regular polygon, bent by up to 0.4 radians a corner, so that most of them close.
          const points = bentRing(
            teeth,
            bends.map((bend) => (2 * Math.PI) / size + bend / 100),
          );
          if (!points) return;
          compared++;
          const movement = ringMovement(teeth);
          const places = spots(points.map((point, index) => [`A${index}`, point.x, point.y]));
          const [ring] = checkRings(movement, places);
          expect(['closes', 'misses']).toContain(ring?.kind);
          if (ring?.kind !== 'closes' && ring?.kind !== 'misses') return;
          const wanted = independentMiss(points.map((point, index) => ({ ...point, teeth: teeth[index] ?? 0, angle })));
          const apart = Math.abs(ring.missTeeth) - Math.abs(wanted);
          // Half a tooth may come out with either sign.
          expect(Math.abs(apart)).toBeLessThan(1e-9);
        },
      ),
      { numRuns: 300 },
    );
    expect(compared).toBeGreaterThan(50);
  });

  it('rhombus of equal wheels at 80/100 degrees (the ring condition, SOURCES.md): 36 and 45 close, 32 and 30 miss', () => {
    const check = (teeth: number) => {
      const half = (40 * Math.PI) / 180;
      const [x, y] = [teeth * Math.cos(half), teeth * Math.sin(half)];
      // Corners of 80 degrees left and right, of 100 degrees above and below.
      const places = spots([
        ['A0', -x, 0],
        ['A1', 0, y],
        ['A2', x, 0],
        ['A3', 0, -y],
      ]);
      const [ring] = checkRings(ringMovement([teeth, teeth, teeth, teeth]), places);
      return ring?.kind === 'closes' || ring?.kind === 'misses' ? ring : undefined;
    };
    expect(check(36)?.kind).toBe('closes');
    expect(check(45)?.kind).toBe('closes');
    expect(Math.abs(check(32)?.missTeeth ?? 0)).toBeCloseTo(4 - 32 / 9, 9);
    expect(Math.abs(check(30)?.missTeeth ?? 0)).toBeCloseTo(30 / 9 - 3, 9);
  });

  it('an odd ring of 20/31/44 stands still and fits at exactly two phases half a pitch apart', () => {
    const points = bentRing([20, 31, 44], [0, 0, 0]);
    if (!points) throw new Error('no triangle');
    const places = spots(points.map((point, index) => [`A${index}`, point.x, point.y]));
    const [ring] = checkRings(ringMovement([20, 31, 44]), places);
    expect(ring?.kind).toBe('standsStill');
    if (ring?.kind !== 'standsStill') return;
    expect(ring.phases).toBe(2);
    const [first, second] = ring.anglesDeg;
    expect((second ?? 0) - (first ?? 0)).toBeCloseTo(360 / ringStart(ring.bodies[0]) / 2, 9);
    // Independent: at those two angles the wheels mesh all round, and at a quarter pitch between they do not.
    const order = ring.bodies.map((body) => Number(String(body).slice(1)));
    const drawn = (angleDeg: number): number =>
      Math.abs(
        independentMiss(
          order.map((index) => ({
            ...(points[index] ?? { x: 0, y: 0 }),
            teeth: [20, 31, 44][index] ?? 0,
            angle: (angleDeg * Math.PI) / 180,
          })),
        ),
      );
    expect(drawn(first ?? 0)).toBeLessThan(1e-9);
    expect(drawn(second ?? 0)).toBeLessThan(1e-9);
    expect(drawn(((first ?? 0) + (second ?? 0)) / 2)).toBeCloseTo(0.5, 6);
  });

  const ringStart = (body: ArborId | undefined): number => [20, 31, 44][Number(String(body).slice(1))] ?? 0;
});

describe('planets', () => {
  it('equally spaced: 48 + 162 with 3 and 30 + 90 with 4 go in; with 4 and 30 + 91 they do not (the ring condition, SOURCES.md)', () => {
    expect(planetSpacing(48, 162, 3).fits).toBe(true);
    expect(planetSpacing(48, 162, 4).fits).toBe(false);
    expect(planetSpacing(30, 90, 4).fits).toBe(true);
    expect(planetSpacing(30, 91, 4).fits).toBe(false);
  });

  it('the rings through sun, planet, ring, planet say the same, for any angles (property)', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 12, max: 60 }),
        fc.integer({ min: 10, max: 40 }),
        fc.double({ min: 60, max: 300, noNaN: true }),
        (sun, planet, angle) => {
          const ringTeeth = sun + 2 * planet;
          const movement = sketchMovement({
            wheels: { s: ['S', sun], p: ['P', planet], q: ['Q', planet], r: ['R', ringTeeth, 'internal'] },
            depths: ['s p', 's q', 'p r', 'q r'],
          });
          const radius = (sun + planet) / 2;
          const places = (degrees: number): Spots => {
            const at = (degrees * Math.PI) / 180;
            return spots([
              ['S', 0, 0],
              ['R', 0, 0],
              ['P', radius, 0],
              ['Q', radius * Math.cos(at), radius * Math.sin(at)],
            ]);
          };
          const spacing = planetSpacing(sun, ringTeeth, [0, angle]);
          const [ring] = checkRings(movement, places(angle));
          expect(
            ring?.kind === 'closes' || ring?.kind === 'misses' ? Math.abs(ring.missTeeth) : Number.NaN,
          ).toBeCloseTo(Math.abs(spacing.planets[1]?.missTeeth ?? Number.NaN), 6);
          expect(checkRings(movement, places(spacing.planets[1]?.nearestDeg ?? 0))[0]?.kind).toBe('closes');
          // Independent: sun, planet, ring, planet turned to mesh one after the other.
          const at = (angle * Math.PI) / 180;
          const wheels: DrawnWheel[] = [
            { x: 0, y: 0, teeth: sun, angle: 0.3 },
            { x: radius, y: 0, teeth: planet, angle: 0 },
            { x: 0, y: 0, teeth: ringTeeth, internal: true, angle: 0 },
            { x: radius * Math.cos(at), y: radius * Math.sin(at), teeth: planet, angle: 0 },
          ];
          expect(Math.abs(independentMiss(wheels))).toBeCloseTo(
            Math.abs(spacing.planets[1]?.missTeeth ?? Number.NaN),
            6,
          );
        },
      ),
      { numRuns: 60 },
    );
  });
});
