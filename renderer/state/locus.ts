/** Where a place may lie when a rule is kept: a point, a circle or a line; nearest points and crossings. */
import type { Point } from './view.ts';

export type Locus =
  | { readonly kind: 'point'; readonly at: Point }
  | { readonly kind: 'circle'; readonly centre: Point; readonly radius: number }
  /** `along` is a unit vector. */
  | { readonly kind: 'line'; readonly through: Point; readonly along: Point };

/** The place of the locus nearest to a place; for the centre of a circle, the one to its right. */
export function nearestOnLocus(locus: Locus, to: Point): Point {
  if (locus.kind === 'point') return locus.at;
  if (locus.kind === 'line') {
    const t = (to.x - locus.through.x) * locus.along.x + (to.y - locus.through.y) * locus.along.y;
    return { x: locus.through.x + t * locus.along.x, y: locus.through.y + t * locus.along.y };
  }
  const dx = to.x - locus.centre.x;
  const dy = to.y - locus.centre.y;
  const away = Math.hypot(dx, dy);
  const [ux, uy] = away > 0 ? [dx / away, dy / away] : [1, 0];
  return { x: locus.centre.x + locus.radius * ux, y: locus.centre.y + locus.radius * uy };
}

export function distanceToLocus(locus: Locus, from: Point): number {
  const nearest = nearestOnLocus(locus, from);
  return Math.hypot(nearest.x - from.x, nearest.y - from.y);
}

/** Crossings of two loci, none to two; coincident loci have none. */
export function crossingsOfLoci(a: Locus, b: Locus): readonly Point[] {
  if (a.kind === 'point' || b.kind === 'point') return [];
  if (a.kind === 'line') return b.kind === 'line' ? lineWithLine(a, b) : circleWithLine(b, a);
  return b.kind === 'line' ? circleWithLine(a, b) : circleWithCircle(a, b);
}

type Line = Extract<Locus, { kind: 'line' }>;
type Circle = Extract<Locus, { kind: 'circle' }>;

function lineWithLine(a: Line, b: Line): readonly Point[] {
  const cross = a.along.x * b.along.y - a.along.y * b.along.x;
  // A thousandth of a radian: flatter crossings are of no use on metal.
  if (Math.abs(cross) < 1e-3) return [];
  const t = ((b.through.x - a.through.x) * b.along.y - (b.through.y - a.through.y) * b.along.x) / cross;
  return [{ x: a.through.x + t * a.along.x, y: a.through.y + t * a.along.y }];
}

function circleWithLine(circle: Circle, line: Line): readonly Point[] {
  const foot = nearestOnLocus(line, circle.centre);
  const off = Math.hypot(foot.x - circle.centre.x, foot.y - circle.centre.y);
  if (off > circle.radius) return [];
  const half = Math.sqrt((circle.radius - off) * (circle.radius + off));
  return [half, -half].map((t) => ({ x: foot.x + t * line.along.x, y: foot.y + t * line.along.y }));
}

function circleWithCircle(a: Circle, b: Circle): readonly Point[] {
  const dx = b.centre.x - a.centre.x;
  const dy = b.centre.y - a.centre.y;
  const d = Math.hypot(dx, dy);
  if (d === 0 || d > a.radius + b.radius || d < Math.abs(a.radius - b.radius)) return [];
  const along = (d + ((a.radius - b.radius) * (a.radius + b.radius)) / d) / 2;
  const line: Line = {
    kind: 'line',
    through: { x: a.centre.x + (along * dx) / d, y: a.centre.y + (along * dy) / d },
    along: { x: -dy / d, y: dx / d },
  };
  return circleWithLine(a, line);
}
