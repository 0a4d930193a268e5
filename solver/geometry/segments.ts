/**
 * Lines and arcs: nearest points and smallest distances, in closed form.
 *
 * The nearest pair of two pieces is either a crossing, or has an end point in it, or lies on a common
 * perpendicular; each case is a short list of candidates, and the smallest wins. Lengths in mm, angles in radians.
 */

export type XY = readonly [number, number];

/** A straight piece between two points, mm. */
export interface LineSegment {
  readonly kind: 'line';
  readonly from: XY;
  readonly to: XY;
}

/** Part of a circle, from angle `start` anticlockwise through `sweep` > 0 (at most 2π). */
export interface ArcSegment {
  readonly kind: 'arc';
  readonly centre: XY;
  readonly radius: number;
  readonly start: number;
  readonly sweep: number;
}

export type Segment = LineSegment | ArcSegment;

/** The two nearest points of a pair, and how far apart they are, mm. */
export interface Nearest {
  readonly distance: number;
  readonly a: XY;
  readonly b: XY;
}

const TURN = 2 * Math.PI;
/** Angles are accepted this far outside an arc, so that its own end points count as on it; rounding of atan2, radians. */
const ANGLE_SLACK = 1e-13;

const dist = (a: XY, b: XY): number => Math.hypot(a[0] - b[0], a[1] - b[1]);
const pair = (a: XY, b: XY): Nearest => ({ distance: dist(a, b), a, b });
const swapped = (n: Nearest): Nearest => ({ distance: n.distance, a: n.b, b: n.a });

/** The point of a circle at an angle. */
export function pointAtAngle(centre: XY, radius: number, angle: number): XY {
  return [centre[0] + radius * Math.cos(angle), centre[1] + radius * Math.sin(angle)];
}

/** End points of a segment, first to last. */
export function endsOf(segment: Segment): readonly [XY, XY] {
  if (segment.kind === 'line') return [segment.from, segment.to];
  const { centre, radius, start, sweep } = segment;
  return [pointAtAngle(centre, radius, start), pointAtAngle(centre, radius, start + sweep)];
}

/** Does the direction from the arc's centre to the point fall within the arc? */
export function arcFaces(arc: ArcSegment, point: XY): boolean {
  if (arc.sweep >= TURN) return true;
  const angle = Math.atan2(point[1] - arc.centre[1], point[0] - arc.centre[0]);
  const turned = (((angle - arc.start) % TURN) + TURN) % TURN;
  return turned <= arc.sweep + ANGLE_SLACK || turned >= TURN - ANGLE_SLACK;
}

/** Nearest point of a segment to a point; `a` lies on the segment, `b` is the point. */
export function nearestToPoint(segment: Segment, point: XY): Nearest {
  if (segment.kind === 'line') return pair(footOnLine(segment, point), point);
  const d = dist(segment.centre, point);
  if (d > 0 && arcFaces(segment, point)) {
    const k = segment.radius / d;
    const on: XY = [
      segment.centre[0] + (point[0] - segment.centre[0]) * k,
      segment.centre[1] + (point[1] - segment.centre[1]) * k,
    ];
    return { distance: Math.abs(d - segment.radius), a: on, b: point };
  }
  const [first, last] = endsOf(segment);
  const toFirst = pair(first, point);
  const toLast = pair(last, point);
  return toFirst.distance <= toLast.distance ? toFirst : toLast;
}

/** Farthest distance from a point to a segment, mm. */
export function farthestFromPoint(segment: Segment, point: XY): number {
  const [first, last] = endsOf(segment);
  const ends = Math.max(dist(first, point), dist(last, point));
  if (segment.kind === 'line') return ends;
  const away: XY = [2 * segment.centre[0] - point[0], 2 * segment.centre[1] - point[1]];
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
export function crossingsOf(first: Segment, second: Segment): readonly XY[] {
  if (first.kind === 'line') return second.kind === 'line' ? lineLine(first, second) : lineArc(first, second);
  return second.kind === 'line' ? lineArc(second, first) : arcArc(first, second);
}

function footOnLine(line: LineSegment, point: XY): XY {
  const dx = line.to[0] - line.from[0];
  const dy = line.to[1] - line.from[1];
  const squared = dx * dx + dy * dy;
  if (squared === 0) return line.from;
  const t = ((point[0] - line.from[0]) * dx + (point[1] - line.from[1]) * dy) / squared;
  if (t <= 0) return line.from;
  if (t >= 1) return line.to;
  return [line.from[0] + t * dx, line.from[1] + t * dy];
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
  const ux = (second.centre[0] - first.centre[0]) / d;
  const uy = (second.centre[1] - first.centre[1]) / d;
  const found: Nearest[] = [];
  for (const s of [1, -1]) {
    const a: XY = [first.centre[0] + s * first.radius * ux, first.centre[1] + s * first.radius * uy];
    if (!arcFaces(first, a)) continue;
    for (const t of [1, -1]) {
      const b: XY = [second.centre[0] + t * second.radius * ux, second.centre[1] + t * second.radius * uy];
      if (arcFaces(second, b)) found.push(pair(a, b));
    }
  }
  return found;
}

/** Concentric arcs that share a direction are nearest along it; the shared directions begin at an end of one of them. */
function concentricPairs(first: ArcSegment, second: ArcSegment): Nearest[] {
  const shared = [...endsOf(second), ...endsOf(first)].find((p) => arcFaces(first, p) && arcFaces(second, p));
  if (!shared) return [];
  const angle = Math.atan2(shared[1] - first.centre[1], shared[0] - first.centre[0]);
  return [pair(pointAtAngle(first.centre, first.radius, angle), pointAtAngle(second.centre, second.radius, angle))];
}

function lineLine(first: LineSegment, second: LineSegment): XY[] {
  const ax = first.to[0] - first.from[0];
  const ay = first.to[1] - first.from[1];
  const bx = second.to[0] - second.from[0];
  const by = second.to[1] - second.from[1];
  const cross = ax * by - ay * bx;
  if (cross === 0) return [];
  const dx = second.from[0] - first.from[0];
  const dy = second.from[1] - first.from[1];
  const t = (dx * by - dy * bx) / cross;
  const u = (dx * ay - dy * ax) / cross;
  if (t < 0 || t > 1 || u < 0 || u > 1) return [];
  return [[first.from[0] + t * ax, first.from[1] + t * ay]];
}

function lineArc(line: LineSegment, arc: ArcSegment): XY[] {
  const dx = line.to[0] - line.from[0];
  const dy = line.to[1] - line.from[1];
  const length = Math.hypot(dx, dy);
  if (length === 0) return [];
  const ux = dx / length;
  const uy = dy / length;
  const along = (arc.centre[0] - line.from[0]) * ux + (arc.centre[1] - line.from[1]) * uy;
  const off = (arc.centre[0] - line.from[0]) * uy - (arc.centre[1] - line.from[1]) * ux;
  const squared = (arc.radius - off) * (arc.radius + off);
  if (squared < 0) return [];
  const half = Math.sqrt(squared);
  return [along - half, along + half]
    .filter((t) => t >= 0 && t <= length)
    .map((t): XY => [line.from[0] + t * ux, line.from[1] + t * uy])
    .filter((point) => arcFaces(arc, point));
}

function arcArc(first: ArcSegment, second: ArcSegment): XY[] {
  const dx = second.centre[0] - first.centre[0];
  const dy = second.centre[1] - first.centre[1];
  const d = Math.hypot(dx, dy);
  const { radius: r } = first;
  const { radius: s } = second;
  if (d === 0 || d > r + s || d < Math.abs(r - s)) return [];
  const along = (d + ((r - s) * (r + s)) / d) / 2;
  const half = Math.sqrt(Math.max(0, (r - along) * (r + along)));
  const base: XY = [first.centre[0] + (along * dx) / d, first.centre[1] + (along * dy) / d];
  const points: XY[] = [
    [base[0] - (half * dy) / d, base[1] + (half * dx) / d],
    [base[0] + (half * dy) / d, base[1] - (half * dx) / d],
  ];
  return points.filter((point) => arcFaces(first, point) && arcFaces(second, point));
}
