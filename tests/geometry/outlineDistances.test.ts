import Flatten from '@flatten-js/core';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { asPoint } from '../../solver/geometry/index.ts';
import {
  areaOfOutline,
  boundsOfOutline,
  containsPoint,
  type OutlineShape,
  piecesOf,
  signedDistanceToRegion,
} from '../../solver/geometry/outlines.ts';
import type { Point } from '../../solver/geometry/point.ts';
import {
  endsOf,
  farthestFromPoint,
  nearestOfSegments,
  nearestToPoint,
  type Segment,
} from '../../solver/geometry/segments.ts';

/** Outside oracle: the general-purpose plane geometry library @flatten-js/core. */
// Its own tolerance is 1e-6, so the scenes stand on a grid of a hundredth: no two things are nearer than that by chance.
const hundredths = (min: number, max: number): fc.Arbitrary<number> =>
  fc.integer({ min: Math.round(min * 100), max: Math.round(max * 100) }).map((n) => n / 100);
const coordinate = hundredths(-50, 50);
const xy = fc.record({ x: coordinate, y: coordinate });

const line: fc.Arbitrary<Segment> = fc
  .tuple(xy, xy)
  .filter(([a, b]) => Math.hypot(a.x - b.x, a.y - b.y) > 0.01)
  .map(([from, to]) => ({ kind: 'line', from, to }));

const arc: fc.Arbitrary<Segment> = fc
  .record({
    centre: xy,
    radius: hundredths(0.1, 40),
    start: hundredths(-3, 3),
    sweep: hundredths(0.05, 6.2),
  })
  .map((part) => ({ kind: 'arc', ...part }));

const segment = fc.oneof(line, arc);

const flatPoint = ({ x, y }: Point): Flatten.Point => new Flatten.Point(x, y);

function flat(piece: Segment): Flatten.Segment | Flatten.Arc {
  if (piece.kind === 'line') {
    return new Flatten.Segment(flatPoint(piece.from), flatPoint(piece.to));
  }
  const end = piece.start + piece.sweep;
  return new Flatten.Arc(flatPoint(piece.centre), piece.radius, piece.start, end, true);
}

/** Points along a piece, for bounds by sampling. */
function samples(piece: Segment, count: number): Point[] {
  return Array.from({ length: count + 1 }, (_, i): Point => {
    const t = i / count;
    if (piece.kind === 'line') {
      return { x: piece.from.x + t * (piece.to.x - piece.from.x), y: piece.from.y + t * (piece.to.y - piece.from.y) };
    }
    const angle = piece.start + t * piece.sweep;
    return { x: piece.centre.x + piece.radius * Math.cos(angle), y: piece.centre.y + piece.radius * Math.sin(angle) };
  });
}

describe('nearest points of lines and arcs', () => {
  it('a point to a piece: as an independent library finds it', () => {
    fc.assert(
      fc.property(segment, xy, (piece, point) => {
        const [distance] = flat(piece).distanceTo(flatPoint(point));
        expect(nearestToPoint(piece, point).distance).toBeCloseTo(distance, 9);
      }),
      { numRuns: 1000 },
    );
  });

  it('two pieces: never above the independent library, and no sampled pair is nearer', () => {
    fc.assert(
      fc.property(segment, segment, (first, second) => {
        const ours = nearestOfSegments(first, second);
        const [theirs] = flat(first).distanceTo(flat(second));
        expect(ours.distance).toBeLessThanOrEqual(theirs + 1e-9);
        let sampled = Number.POSITIVE_INFINITY;
        for (const p of samples(first, 200)) sampled = Math.min(sampled, nearestToPoint(second, p).distance);
        expect(ours.distance).toBeLessThanOrEqual(sampled + 1e-9);
        // The step of the sampling bounds how far it can miss.
        const step =
          first.kind === 'line'
            ? Math.hypot(first.to.x - first.from.x, first.to.y - first.from.y)
            : first.radius * first.sweep;
        expect(ours.distance).toBeGreaterThanOrEqual(sampled - step / 200);
      }),
      { numRuns: 500 },
    );
  });

  it('the witnesses lie on their pieces and are that far apart; swapping the pieces changes nothing', () => {
    fc.assert(
      fc.property(segment, segment, (first, second) => {
        const { distance, a, b } = nearestOfSegments(first, second);
        expect(Math.hypot(a.x - b.x, a.y - b.y)).toBeCloseTo(distance, 9);
        expect(nearestToPoint(first, a).distance).toBeLessThan(1e-9);
        expect(nearestToPoint(second, b).distance).toBeLessThan(1e-9);
        expect(nearestOfSegments(second, first).distance).toBeCloseTo(distance, 9);
      }),
      { numRuns: 500 },
    );
  });

  it('the farthest point of a piece is at least as far as any sample, and one sample comes near it', () => {
    fc.assert(
      fc.property(segment, xy, (piece, point) => {
        const most = farthestFromPoint(piece, point);
        const sampled = Math.max(...samples(piece, 400).map((p) => Math.hypot(p.x - point.x, p.y - point.y)));
        expect(most).toBeGreaterThanOrEqual(sampled - 1e-9);
        expect(most - sampled).toBeLessThan(0.7);
      }),
    );
  });
});

/** A closed outline whose vertices run round the origin, so that it cannot cross itself when its bulges are small. */
const outline: fc.Arbitrary<OutlineShape> = fc
  .array(
    fc.record({ r: fc.double({ min: 10, max: 30, noNaN: true }), bulge: fc.double({ min: 0, max: 0.3, noNaN: true }) }),
    {
      minLength: 3,
      maxLength: 9,
    },
  )
  .map((corners) => ({
    kind: 'path',
    vertices: corners.map(({ r, bulge }, i) => ({
      x: r * Math.cos((2 * Math.PI * i) / corners.length),
      y: r * Math.sin((2 * Math.PI * i) / corners.length),
      bulge: bulge < 0.02 ? 0 : bulge,
    })),
  }));

function polygonOf(shape: OutlineShape): Flatten.Polygon {
  const polygon = new Flatten.Polygon();
  if (shape.kind === 'circle') throw new Error('not asked here');
  const edges = piecesOf(shape).map((piece) => flat(piece));
  polygon.addFace(edges);
  return polygon;
}

describe('closed outlines', () => {
  it('area, inside and signed distance agree with an independent library', () => {
    fc.assert(
      fc.property(outline, xy, (shape, point) => {
        const polygon = polygonOf(shape);
        expect(Math.abs(areaOfOutline(shape))).toBeCloseTo(polygon.area(), 6);
        // Edge by edge: the library's polygon distance snaps to vertices within its own tolerance.
        const distance = Math.min(...piecesOf(shape).map((piece) => flat(piece).distanceTo(flatPoint(point))[0]));
        const signed = signedDistanceToRegion({ outer: shape, holes: [] }, point).distance;
        const inside = polygon.contains(flatPoint(point));
        if (Math.abs(signed) > 1e-6) {
          expect(containsPoint(shape, point)).toBe(inside);
          expect(signed < 0).toBe(inside);
        }
        if (!inside) expect(signed).toBeCloseTo(distance, 9);
      }),
      { numRuns: 500 },
    );
  });

  it('bounds hold every sample and touch it on all sides', () => {
    fc.assert(
      fc.property(outline, (shape) => {
        const [minX, minY, maxX, maxY] = boundsOfOutline(shape);
        const points = piecesOf(shape).flatMap((piece) => [...samples(piece, 300), ...endsOf(piece)]);
        const xs = points.map((p) => p.x);
        const ys = points.map((p) => p.y);
        for (const [bound, got] of [
          [minX, Math.min(...xs)],
          [minY, Math.min(...ys)],
          [-maxX, Math.min(...xs.map((x) => -x))],
          [-maxY, Math.min(...ys.map((y) => -y))],
        ] as const) {
          expect(bound).toBeLessThanOrEqual(got + 1e-9);
          expect(got - bound).toBeLessThan(0.01);
        }
      }),
    );
  });

  it('a point on the chord of an arc is inside, whichever side of the outline the arc is on', () => {
    const box = (bulges: readonly number[]): OutlineShape => ({
      kind: 'path',
      vertices: bulges.map((bulge, i) => ({ x: [0, 5, 5, 0][i] ?? 0, y: [0, 0, 2, 2][i] ?? 0, bulge })),
    });
    const middles = [
      [2, 0],
      [5, 1],
      [2, 2],
      [0, 1],
    ] as const;
    middles.forEach((middle, side) => {
      expect(containsPoint(box([0, 1, 2, 3].map((i) => (i === side ? 0.3 : 0))), asPoint(middle))).toBe(true);
      expect(containsPoint(box([0, 1, 2, 3].map((i) => (i === side ? -0.3 : 0))), asPoint(middle))).toBe(false);
    });
  });

  it('a ring: solid between its circles, free in its hole', () => {
    const ring = {
      outer: { kind: 'circle', centre: [3, 4], radius: 10 },
      holes: [{ kind: 'circle', centre: [3, 4], radius: 8 }],
    } as const;
    expect(signedDistanceToRegion(ring, { x: 3, y: 4 }).distance).toBeCloseTo(8, 12);
    expect(signedDistanceToRegion(ring, { x: 12.5, y: 4 }).distance).toBeCloseTo(-0.5, 12);
    expect(signedDistanceToRegion(ring, { x: 15, y: 4 }).distance).toBeCloseTo(2, 12);
  });
});
