/** Loci: nearest places, normals, crossings and the other crossing; and that nothing lies behind the start of a ray. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  type Curve,
  crossingAngle,
  crossingsOfLoci,
  distanceToLocus,
  type Locus,
  nearestOnLocus,
  normalOfLocus,
  offLocus,
  otherCrossingOfLoci,
  type Point,
} from '../../solver/geometry/index.ts';

const number = fc.double({ min: -200, max: 200, noNaN: true });
const point = fc.record({ x: number, y: number });
const turn = fc.double({ min: 0, max: 2 * Math.PI, noNaN: true });
const unit = turn.map((angle): Point => ({ x: Math.cos(angle), y: Math.sin(angle) }));
const circle = fc
  .record({ centre: point, radius: fc.double({ min: 0.5, max: 200, noNaN: true }) })
  .map((each): Curve => ({ kind: 'circle', ...each }));
const line = fc.record({ through: point, along: unit }).map((each): Curve => ({ kind: 'line', ...each }));
const ray = fc.record({ through: point, along: unit }).map((each): Curve => ({ kind: 'ray', ...each }));
const curve = fc.oneof(circle, line, ray);

/** A place on a locus: at an angle of a circle, or so far along a line; a ray is not run backwards. */
function placeOn(locus: Curve, by: number): Point {
  if (locus.kind === 'circle') {
    const { centre, radius } = locus;
    return { x: centre.x + radius * Math.cos(by), y: centre.y + radius * Math.sin(by) };
  }
  const t = locus.kind === 'ray' ? Math.abs(by) : by;
  return { x: locus.through.x + t * locus.along.x, y: locus.through.y + t * locus.along.y };
}

/** The whole line that a ray is a part of. */
const wholeOf = (locus: Curve): Curve => (locus.kind === 'ray' ? { ...locus, kind: 'line' } : locus);

const isBehind = (locus: Locus, at: Point): boolean =>
  locus.kind === 'ray' && (at.x - locus.through.x) * locus.along.x + (at.y - locus.through.y) * locus.along.y < -1e-9;

describe('a locus', () => {
  it('has a nearest place that lies on it, and none nearer', () => {
    fc.assert(
      fc.property(curve, point, number, (each, to, by) => {
        const nearest = nearestOnLocus(each, to);
        expect(Math.abs(offLocus(each, nearest))).toBeLessThan(1e-9);
        const other = placeOn(each, by);
        const away = Math.hypot(nearest.x - to.x, nearest.y - to.y);
        expect(Math.hypot(other.x - to.x, other.y - to.y)).toBeGreaterThanOrEqual(away - 1e-9);
        expect(Math.abs(offLocus(each, to))).toBeCloseTo(distanceToLocus(each, to), 9);
      }),
    );
  });

  it('has a unit normal along which the distance grows as fast as the way', () => {
    fc.assert(
      fc.property(curve, fc.double({ min: 0.1, max: 100, noNaN: true }), (each, by) => {
        const at = placeOn(each, by);
        const n = normalOfLocus(each, at);
        const step = 1e-3;
        expect(offLocus(each, { x: at.x + step * n.x, y: at.y + step * n.y })).toBeCloseTo(step, 9);
      }),
    );
  });

  it('that is a ray ends at its start', () => {
    const east: Locus = { kind: 'ray', through: { x: 0, y: 0 }, along: { x: 1, y: 0 } };
    expect(offLocus(east, { x: -3, y: 4 })).toBe(5);
    expect(offLocus(east, { x: 3, y: 4 })).toBe(4);
    expect(nearestOnLocus(east, { x: -3, y: 4 })).toEqual({ x: 0, y: 0 });
  });
});

describe('two loci', () => {
  it('cross where both are, and nowhere behind the start of a ray', () => {
    fc.assert(
      fc.property(curve, curve, (a, b) => {
        for (const at of crossingsOfLoci(a, b)) {
          expect(distanceToLocus(a, at)).toBeLessThan(1e-5);
          expect(distanceToLocus(b, at)).toBeLessThan(1e-5);
          expect(isBehind(a, at) || isBehind(b, at)).toBe(false);
        }
      }),
    );
  });

  it('of which one is a ray cross where its line does, less what lies behind its start', () => {
    fc.assert(
      fc.property(ray, fc.oneof(circle, line), (first, second) => {
        const whole = crossingsOfLoci(wholeOf(first), second);
        const ahead = whole.filter((at) => !isBehind(first, at));
        expect(crossingsOfLoci(first, second)).toHaveLength(ahead.length);
        expect(crossingsOfLoci(second, first)).toHaveLength(ahead.length);
      }),
    );
  });

  it('have an other crossing exactly where there are two, and it is the other one of them', () => {
    let pairs = 0;
    fc.assert(
      fc.property(circle, curve, (first, second) => {
        const [a, b] = crossingsOfLoci(first, second);
        if (!a) return;
        const other = otherCrossingOfLoci(first, second, a);
        if (!b) {
          // A touch, or the only crossing ahead of a ray's start; the rounding of a touch may tell it apart from itself.
          if (other) expect(Math.hypot(other.x - a.x, other.y - a.y)).toBeLessThan(1e-3);
          return;
        }
        // Flatter crossings cost digits: an error of the place is divided by the sine of the angle.
        if (crossingAngle(first, second, a) < 0.02) return;
        // A ray's own start is a point already: no other place is struck there.
        if (second.kind === 'ray' && Math.hypot(second.through.x - b.x, second.through.y - b.y) < 1e-6) return;
        pairs++;
        expect(Math.hypot((other?.x ?? Number.NaN) - b.x, (other?.y ?? Number.NaN) - b.y)).toBeLessThan(1e-6);
      }),
      { numRuns: 500, endOnFailure: true },
    );
    expect(pairs).toBeGreaterThan(50);
  });

  // 3-4-5: the circle of radius 5 meets the line y = 4 at x = -3 and x = 3.
  const round: Locus = { kind: 'circle', centre: { x: 0, y: 0 }, radius: 5 };
  const through = (x: number, along: number): Locus => ({
    kind: 'ray',
    through: { x, y: 4 },
    along: { x: along, y: 0 },
  });

  it.each([
    ['from the left of both', -10, 1, true],
    ['from between the two, to the right', 0, 1, false],
    ['from the right of both, to the left', 10, -1, true],
    ['from between the two, to the left', 0, -1, false],
  ] as const)('a ray %s', (_, x, along, isOther) => {
    const at = { x: 3 * along, y: 4 };
    const other = otherCrossingOfLoci(round, through(x, along), at);
    expect(other).toEqual(isOther ? { x: -3 * along, y: 4 } : undefined);
    expect(otherCrossingOfLoci(through(x, along), round, at)).toEqual(other);
  });

  it('that coincide, and points, are told no crossing', () => {
    expect(crossingsOfLoci(round, round)).toEqual([]);
    expect(crossingsOfLoci(round, { kind: 'point', at: { x: 5, y: 0 } })).toEqual([]);
  });
});
