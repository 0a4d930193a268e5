/** A stated gap as a length in the plane: between two centres, or from a centre to a straight edge. */
import { areaOfOutline, asPoint, nearestToPoint, type Point, pieceBetween } from '../../geometry/index.ts';
import type { PointId } from '../../movement/ids.ts';
import type { Outline } from '../../movement/schema.ts';
import type { Body, CaseBody, RoundBody } from './bodies.ts';

/** What a gap asks of the points. `fixed` places belong to the case. */
export type GapRule =
  /** More gap is more length, or inside a ring less. */
  | {
      readonly kind: 'centres';
      readonly point: PointId;
      readonly from: PointId | Point;
      readonly length: number;
      readonly inside: boolean;
    }
  /** normal · place = offset, the normal pointing to the free side. */
  | {
      readonly kind: 'edge';
      readonly point: PointId;
      readonly normal: Point;
      readonly offset: number;
      readonly length: number;
    }
  /** No place keeps this gap: `lacking` mm are missing inside a ring (0 where nothing can move at all). */
  | { readonly kind: 'cannot'; readonly why: 'bothFixed' | 'noRoom' | 'noEdge'; readonly lacking: number };

/**
 * The length that keeps `gap` between two bodies.
 *
 * @param edge     index of the first vertex of the side of a straight-sided case part; the nearest side when absent
 * @param sketchOf sketch place of a point: decides inside or outside, never the length
 */
export function gapRule(
  bodies: readonly [Body, Body],
  gap: number,
  edge: number | undefined,
  sketchOf: (point: PointId) => Point,
): GapRule {
  const [a, b] = bodies;
  if (a.kind === 'round' && b.kind === 'round') return betweenRounds(a, b, gap, sketchOf);
  if (a.kind === 'round' && b.kind === 'case') return toCase(a, b, gap, edge, sketchOf);
  if (a.kind === 'case' && b.kind === 'round') return toCase(b, a, gap, edge, sketchOf);
  return { kind: 'cannot', why: 'bothFixed', lacking: 0 };
}

function betweenRounds(a: RoundBody, b: RoundBody, gap: number, sketchOf: (point: PointId) => Point): GapRule {
  const { x: ax, y: ay } = sketchOf(a.point);
  const { x: bx, y: by } = sketchOf(b.point);
  const apart = Math.hypot(bx - ax, by - ay);
  if (a.inner !== undefined && apart < a.inner) return centres(b.point, a.point, a.inner - b.outer - gap, true);
  if (b.inner !== undefined && apart < b.inner) return centres(a.point, b.point, b.inner - a.outer - gap, true);
  return centres(a.point, b.point, a.outer + b.outer + gap, false);
}

function centres(point: PointId, from: PointId | Point, length: number, inside: boolean): GapRule {
  if (length < 0) return { kind: 'cannot', why: 'noRoom', lacking: -length };
  return { kind: 'centres', point, from, length, inside };
}

function toCase(
  round: RoundBody,
  fixed: CaseBody,
  gap: number,
  edge: number | undefined,
  sketchOf: (point: PointId) => Point,
): GapRule {
  const sketch = sketchOf(round.point);
  const { outline, free } = fixed.boundaryAt(sketch);
  if (outline.kind === 'circle') return fromArc(round, asPoint(outline.centre), outline.radius, free === 'inside', gap);

  const index = edge ?? nearestEdge(outline, sketch);
  const from = outline.vertices[index];
  const to = outline.vertices[(index + 1) % outline.vertices.length];
  if (!from || !to) return { kind: 'cannot', why: 'noEdge', lacking: 0 };
  // The material of a anticlockwise outline lies to the left of travel.
  const leftIsFree = areaOfOutline(outline) > 0 === (free === 'inside');
  const piece = pieceBetween(from, to);
  // A left-turning arc has its centre to the left.
  if (piece.kind === 'arc') return fromArc(round, piece.centre, piece.radius, from.bulge > 0 === leftIsFree, gap);
  const length = Math.hypot(to.x - from.x, to.y - from.y);
  if (length === 0) return { kind: 'cannot', why: 'noEdge', lacking: 0 };
  const turn = leftIsFree ? 1 : -1;
  const normal: Point = { x: (-turn * (to.y - from.y)) / length, y: (turn * (to.x - from.x)) / length };
  const away = round.outer + gap;
  return {
    kind: 'edge',
    point: round.point,
    normal,
    offset: normal.x * from.x + normal.y * from.y + away,
    length: away,
  };
}

function fromArc(round: RoundBody, centre: Point, radius: number, inside: boolean, gap: number): GapRule {
  const length = inside ? radius - round.outer - gap : radius + round.outer + gap;
  return centres(round.point, centre, length, inside);
}

function nearestEdge(outline: Extract<Outline, { kind: 'path' }>, sketch: Point): number {
  let best = 0;
  let nearest = Number.POSITIVE_INFINITY;
  outline.vertices.forEach((vertex, index) => {
    const next = outline.vertices[(index + 1) % outline.vertices.length] ?? vertex;
    const { distance } = nearestToPoint(pieceBetween(vertex, next), sketch);
    if (distance < nearest) {
      nearest = distance;
      best = index;
    }
  });
  return best;
}
