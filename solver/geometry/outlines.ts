/**
 * Closed outlines of lines and arcs: pieces, bounds, area, inside or outside, and signed distance.
 *
 * A vertex carries the bulge of the piece to the next vertex: the tangent of a quarter of the included angle,
 * positive when the arc turns left (anticlockwise), 0 for a straight line.
 */
import { asPoint, type Point, type XY } from './point.ts';
import { endsOf, farthestFromPoint, type Nearest, nearestToPoint, type Segment } from './segments.ts';

/**
 * A corner of a path, mm; `bulge` belongs to the piece that leads on from it: the tangent of a quarter of its
 * included angle, + to the left, 0 straight.
 */
export interface OutlineVertex {
  readonly x: number;
  readonly y: number;
  readonly bulge: number;
}

/** A closed shape: a whole circle, or a path whose last corner joins the first. Lengths in mm. */
export type OutlineShape =
  | { readonly kind: 'circle'; readonly centre: XY; readonly radius: number }
  | { readonly kind: 'path'; readonly vertices: readonly OutlineVertex[] };

/** A filled outline with holes in it. */
export interface Region {
  readonly outer: OutlineShape;
  readonly holes: readonly OutlineShape[];
}

/** Lower left and upper right corner, mm: [minX, minY, maxX, maxY]. */
export type Bounds = readonly [number, number, number, number];

const TURN = 2 * Math.PI;

/** The piece between two vertices. An arc is told anticlockwise whatever its direction of travel. */
export function pieceBetween(from: OutlineVertex, to: OutlineVertex): Segment {
  const a: Point = { x: from.x, y: from.y };
  const b: Point = { x: to.x, y: to.y };
  if (from.bulge === 0) return { kind: 'line', from: a, to: b };
  const { bulge } = from;
  const chordX = b.x - a.x;
  const chordY = b.y - a.y;
  const chord = Math.hypot(chordX, chordY);
  // Centre at chord·(1 − b²)/(4b) to the left of the chord's middle; radius chord·(1 + b²)/(4|b|).
  const left = (1 - bulge * bulge) / (4 * bulge);
  const centre: Point = { x: (a.x + b.x) / 2 - chordY * left, y: (a.y + b.y) / 2 + chordX * left };
  const radius = (chord * (1 + bulge * bulge)) / (4 * Math.abs(bulge));
  const first = bulge > 0 ? a : b;
  const start = Math.atan2(first.y - centre.y, first.x - centre.x);
  return { kind: 'arc', centre, radius, start, sweep: 4 * Math.atan(Math.abs(bulge)) };
}

/** The pieces of an outline, in order; a circle is one whole arc. */
export function piecesOf(outline: OutlineShape): readonly Segment[] {
  if (outline.kind === 'circle') {
    return [{ kind: 'arc', centre: asPoint(outline.centre), radius: outline.radius, start: 0, sweep: TURN }];
  }
  const { vertices } = outline;
  return vertices.map((vertex, index) => {
    const next = vertices[(index + 1) % vertices.length] ?? vertex;
    return pieceBetween(vertex, next);
  });
}

/** Bounds of an outline, exact for arcs. */
export function boundsOfOutline(outline: OutlineShape): Bounds {
  let minX = Number.POSITIVE_INFINITY;
  let minY = Number.POSITIVE_INFINITY;
  let maxX = Number.NEGATIVE_INFINITY;
  let maxY = Number.NEGATIVE_INFINITY;
  const take = ({ x, y }: Point): void => {
    minX = Math.min(minX, x);
    minY = Math.min(minY, y);
    maxX = Math.max(maxX, x);
    maxY = Math.max(maxY, y);
  };
  for (const piece of piecesOf(outline)) {
    for (const end of endsOf(piece)) take(end);
    if (piece.kind === 'line') continue;
    for (let quarter = 0; quarter < 4; quarter++) {
      const angle = (quarter * Math.PI) / 2;
      const turned = (((angle - piece.start) % TURN) + TURN) % TURN;
      if (turned > piece.sweep) continue;
      const { x: ux, y: uy } = QUARTERS[quarter] ?? { x: 0, y: 0 };
      take({ x: piece.centre.x + piece.radius * ux, y: piece.centre.y + piece.radius * uy });
    }
  }
  return [minX, minY, maxX, maxY];
}

const QUARTERS: readonly Point[] = [
  { x: 1, y: 0 },
  { x: 0, y: 1 },
  { x: -1, y: 0 },
  { x: 0, y: -1 },
];

/** Signed area, mm²; positive when the vertices run anticlockwise. */
export function areaOfOutline(outline: OutlineShape): number {
  if (outline.kind === 'circle') return Math.PI * outline.radius * outline.radius;
  const { vertices } = outline;
  const origin = vertices[0];
  if (!origin) return 0;
  let twice = 0;
  vertices.forEach((vertex, index) => {
    const next = vertices[(index + 1) % vertices.length] ?? vertex;
    const ax = vertex.x - origin.x;
    const ay = vertex.y - origin.y;
    const bx = next.x - origin.x;
    const by = next.y - origin.y;
    twice += ax * by - ay * bx;
    if (vertex.bulge === 0) return;
    const angle = 4 * Math.atan(Math.abs(vertex.bulge));
    const radius = (Math.hypot(bx - ax, by - ay) * (1 + vertex.bulge ** 2)) / (4 * Math.abs(vertex.bulge));
    twice += Math.sign(vertex.bulge) * radius * radius * (angle - Math.sin(angle));
  });
  return twice / 2;
}

/**
 * Is the point inside the outline? Points on the boundary may fall either way.
 * A ray to the right is counted against the chords; each arc then adds or takes away the cap over its chord.
 */
export function containsPoint(outline: OutlineShape, point: Point): boolean {
  if (outline.kind === 'circle') {
    return Math.hypot(point.x - outline.centre[0], point.y - outline.centre[1]) < outline.radius;
  }
  const { vertices } = outline;
  let inside = false;
  vertices.forEach((vertex, index) => {
    const next = vertices[(index + 1) % vertices.length] ?? vertex;
    if (vertex.y > point.y !== next.y > point.y) {
      const x = vertex.x + ((point.y - vertex.y) * (next.x - vertex.x)) / (next.y - vertex.y);
      if (point.x < x) inside = !inside;
    }
    if (vertex.bulge !== 0 && inArcCap(vertex, next, point)) inside = !inside;
  });
  return inside;
}

/** Is the point in the cap between a chord and its arc? */
function inArcCap(from: OutlineVertex, to: OutlineVertex, point: Point): boolean {
  const arc = pieceBetween(from, to);
  if (arc.kind === 'line') return false;
  if (Math.hypot(point.x - arc.centre.x, point.y - arc.centre.y) >= arc.radius) return false;
  const dx = to.x - from.x;
  const dy = to.y - from.y;
  const side = dx * (point.y - from.y) - dy * (point.x - from.x);
  // On the chord itself the count of chords reads the point a hair higher, then a hair to the right; so must the cap.
  const above = side !== 0 ? side : dx !== 0 ? dx : -dy;
  // A left-turning arc bulges to the right of its chord.
  return from.bulge > 0 ? above < 0 : above > 0;
}

/** Nearest point of an outline's boundary: `a` on the boundary, `b` the point. */
export function nearestOnOutline(outline: OutlineShape, point: Point): Nearest {
  let best: Nearest | undefined;
  for (const piece of piecesOf(outline)) {
    const next = nearestToPoint(piece, point);
    if (!best || next.distance < best.distance) best = next;
  }
  return best ?? { distance: Number.POSITIVE_INFINITY, a: point, b: point };
}

/** Signed distance from a point to a filled region, mm: negative inside the solid, with the nearest boundary point. */
export function signedDistanceToRegion(region: Region, point: Point): Nearest {
  let best = nearestOnOutline(region.outer, point);
  let solid = containsPoint(region.outer, point);
  for (const hole of region.holes) {
    const next = nearestOnOutline(hole, point);
    if (next.distance < best.distance) best = next;
    if (containsPoint(hole, point)) solid = false;
  }
  return solid ? { ...best, distance: -best.distance } : best;
}

/** Farthest distance from a point to an outline, mm. */
export function farthestOnOutline(outline: OutlineShape, point: Point): number {
  let most = 0;
  for (const piece of piecesOf(outline)) most = Math.max(most, farthestFromPoint(piece, point));
  return most;
}
