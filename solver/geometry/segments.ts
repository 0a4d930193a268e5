/**
 * Lines and arcs: nearest points and smallest distances, in closed form.
 *
 * The nearest pair of two pieces is either a crossing, or has an end point in it, or lies on a common
 * perpendicular; each case is a short list of candidates, and the smallest wins. Lengths in mm, angles in radians.
 */

import type { Point } from './point.ts';

/** A straight piece between two points, mm. */
export interface LineSegment {
  readonly kind: 'line';
  readonly from: Point;
  readonly to: Point;
}

/** Part of a circle, from angle `start` anticlockwise through `sweep` > 0 (at most 2π). */
export interface ArcSegment {
  readonly kind: 'arc';
  readonly centre: Point;
  readonly radius: number;
  readonly start: number;
  readonly sweep: number;
}

export type Segment = LineSegment | ArcSegment;

/** The two nearest points of a pair, and how far apart they are, mm. */
export interface Nearest {
  readonly distance: number;
  readonly a: Point;
  readonly b: Point;
}

const TURN = 2 * Math.PI;
/** Angles are accepted this far outside an arc, so that its own end points count as on it; rounding of atan2, radians. */
const ANGLE_SLACK = 1e-13;

const dist = (a: Point, b: Point): number => Math.hypot(a.x - b.x, a.y - b.y);
const pair = (a: Point, b: Point): Nearest => ({ distance: dist(a, b), a, b });
const swapped = (n: Nearest): Nearest => ({ distance: n.distance, a: n.b, b: n.a });

/** The point of a circle at an angle. */
export function pointAtAngle(centre: Point, radius: number, angle: number): Point {
  return { x: centre.x + radius * Math.cos(angle), y: centre.y + radius * Math.sin(angle) };
}

/** End points of a segment, first to last. */
export function endsOf(segment: Segment): readonly [Point, Point] {
  if (segment.kind === 'line') return [segment.from, segment.to];
  const { centre, radius, start, sweep } = segment;
  return [pointAtAngle(centre, radius, start), pointAtAngle(centre, radius, start + sweep)];
}

/** Does the direction from the arc's centre to the point fall within the arc? */
export function arcFaces(arc: ArcSegment, point: Point): boolean {
  if (arc.sweep >= TURN) return true;
  const angle = Math.atan2(point.y - arc.centre.y, point.x - arc.centre.x);
  const turned = (((angle - arc.start) % TURN) + TURN) % TURN;
  return turned <= arc.sweep + ANGLE_SLACK || turned >= TURN - ANGLE_SLACK;
}

/** Nearest point of a segment to a point; `a` lies on the segment, `b` is the point. */
export function nearestToPoint(segment: Segment, point: Point): Nearest {
  if (segment.kind === 'line') return pair(footOnLine(segment, point), point);
  const d = dist(segment.centre, point);
  if (d > 0 && arcFaces(segment, point)) {
    const k = segment.radius / d;
    const on: Point = {
      x: segment.centre.x + (point.x - segment.centre.x) * k,
      y: segment.centre.y + (point.y - segment.centre.y) * k,
    };
    return { distance: Math.abs(d - segment.radius), a: on, b: point };
  }
  const [first, last] = endsOf(segment);
  const toFirst = pair(first, point);
  const toLast = pair(last, point);
  return toFirst.distance <= toLast.distance ? toFirst : toLast;
}

/** Farthest distance from a point to a segment, mm. */
export function farthestFromPoint(segment: Segment, point: Point): number {
  const [first, last] = endsOf(segment);
  const ends = Math.max(dist(first, point), dist(last, point));
  if (segment.kind === 'line') return ends;
  const away: Point = { x: 2 * segment.centre.x - point.x, y: 2 * segment.centre.y - point.y };
  const whole = dist(segment.centre, point) + segment.radius;
  return arcFaces(segment, away) || dist(segment.centre, point) === 0 ? Math.max(whole, ends) : ends;
}

/** Nearest points of two segments; distance 0 where they cross or touch. */
export function nearestOfSegments(first: Segment, second: Segment): Nearest {
  const candidates: Nearest[] = [];
  for (const end of endsOf(second)) candidates.push(nearestToPoint(first, end));
  for (const end of endsOf(first)) candidates.push(swapped(nearestToPoint(second, end)));
  for (const point of crossingsOf(first, second)) candidates.push({ distance: 0, a: point, b: point });
  candidates.push(...perpendiculars(first, second));
  return candidates.reduce((best, next) => (next.distance < best.distance ? next : best));
}

/** Points where two segments meet (overlapping pieces are met through their end points). */
export function crossingsOf(first: Segment, second: Segment): readonly Point[] {
  if (first.kind === 'line') return second.kind === 'line' ? lineLine(first, second) : lineArc(first, second);
  return second.kind === 'line' ? lineArc(second, first) : arcArc(first, second);
}

function footOnLine(line: LineSegment, point: Point): Point {
  const dx = line.to.x - line.from.x;
  const dy = line.to.y - line.from.y;
  const squared = dx * dx + dy * dy;
  if (squared === 0) return line.from;
  const t = ((point.x - line.from.x) * dx + (point.y - line.from.y) * dy) / squared;
  if (t <= 0) return line.from;
  if (t >= 1) return line.to;
  return { x: line.from.x + t * dx, y: line.from.y + t * dy };
}

/** Candidates on a common perpendicular, inside both pieces. */
function perpendiculars(first: Segment, second: Segment): Nearest[] {
  if (first.kind === 'line' && second.kind === 'line') return [];
  if (first.kind === 'arc' && second.kind === 'arc') return centreLinePairs(first, second);
  const [line, arc] = first.kind === 'line' ? [first, second as ArcSegment] : [second as LineSegment, first];
  const foot = footOnLine(line, arc.centre);
  const found = arcFaces(arc, foot) && dist(foot, arc.centre) > 0 ? [swapped(nearestToPoint(arc, foot))] : [];
  return first.kind === 'line' ? found : found.map(swapped);
}

/** Two circles are nearest along the line of their centres: at most four pairs of points on it. */
function centreLinePairs(first: ArcSegment, second: ArcSegment): Nearest[] {
  const d = dist(first.centre, second.centre);
  if (d === 0) return concentricPairs(first, second);
  const ux = (second.centre.x - first.centre.x) / d;
  const uy = (second.centre.y - first.centre.y) / d;
  const found: Nearest[] = [];
  for (const s of [1, -1]) {
    const a: Point = { x: first.centre.x + s * first.radius * ux, y: first.centre.y + s * first.radius * uy };
    if (!arcFaces(first, a)) continue;
    for (const t of [1, -1]) {
      const b: Point = { x: second.centre.x + t * second.radius * ux, y: second.centre.y + t * second.radius * uy };
      if (arcFaces(second, b)) found.push(pair(a, b));
    }
  }
  return found;
}

/** Concentric arcs that share a direction are nearest along it; the shared directions begin at an end of one of them. */
function concentricPairs(first: ArcSegment, second: ArcSegment): Nearest[] {
  const shared = [...endsOf(second), ...endsOf(first)].find((p) => arcFaces(first, p) && arcFaces(second, p));
  if (!shared) return [];
  const angle = Math.atan2(shared.y - first.centre.y, shared.x - first.centre.x);
  return [pair(pointAtAngle(first.centre, first.radius, angle), pointAtAngle(second.centre, second.radius, angle))];
}

function lineLine(first: LineSegment, second: LineSegment): Point[] {
  const ax = first.to.x - first.from.x;
  const ay = first.to.y - first.from.y;
  const bx = second.to.x - second.from.x;
  const by = second.to.y - second.from.y;
  const cross = ax * by - ay * bx;
  if (cross === 0) return [];
  const dx = second.from.x - first.from.x;
  const dy = second.from.y - first.from.y;
  const t = (dx * by - dy * bx) / cross;
  const u = (dx * ay - dy * ax) / cross;
  if (t < 0 || t > 1 || u < 0 || u > 1) return [];
  return [{ x: first.from.x + t * ax, y: first.from.y + t * ay }];
}

function lineArc(line: LineSegment, arc: ArcSegment): Point[] {
  const dx = line.to.x - line.from.x;
  const dy = line.to.y - line.from.y;
  const length = Math.hypot(dx, dy);
  if (length === 0) return [];
  const ux = dx / length;
  const uy = dy / length;
  const along = (arc.centre.x - line.from.x) * ux + (arc.centre.y - line.from.y) * uy;
  const off = (arc.centre.x - line.from.x) * uy - (arc.centre.y - line.from.y) * ux;
  const squared = (arc.radius - off) * (arc.radius + off);
  if (squared < 0) return [];
  const half = Math.sqrt(squared);
  return [along - half, along + half]
    .filter((t) => t >= 0 && t <= length)
    .map((t): Point => ({ x: line.from.x + t * ux, y: line.from.y + t * uy }))
    .filter((point) => arcFaces(arc, point));
}

function arcArc(first: ArcSegment, second: ArcSegment): Point[] {
  const dx = second.centre.x - first.centre.x;
  const dy = second.centre.y - first.centre.y;
  const d = Math.hypot(dx, dy);
  const { radius: r } = first;
  const { radius: s } = second;
  if (d === 0 || d > r + s || d < Math.abs(r - s)) return [];
  const along = (d + ((r - s) * (r + s)) / d) / 2;
  const half = Math.sqrt(Math.max(0, (r - along) * (r + along)));
  const base: Point = { x: first.centre.x + (along * dx) / d, y: first.centre.y + (along * dy) / d };
  const points: Point[] = [
    { x: base.x - (half * dy) / d, y: base.y + (half * dx) / d },
    { x: base.x + (half * dy) / d, y: base.y - (half * dx) / d },
  ];
  return points.filter((point) => arcFaces(first, point) && arcFaces(second, point));
}
