/** Where two loci cross: the angle, the other crossing, and which of the two is meant, in words. */
import type { Point } from '../../planting/placed.ts';
import { type Locus, type Metal, ONE_POINT, separation } from './metal.ts';

/** Unit normal of a locus at a point on it. */
export function normalAt(locus: Locus, at: Point): Point {
  if (locus.shape === 'line') return { x: -locus.direction.y, y: locus.direction.x };
  return { x: (at.x - locus.centre.x) / locus.radius, y: (at.y - locus.centre.y) / locus.radius };
}

/** Signed distance of a point from a locus, mm; for a ray behind its start, the distance from the start. */
export function offLocus(locus: Locus, at: Point): number {
  if (locus.shape === 'circle') return separation(locus.centre, at) - locus.radius;
  const dx = at.x - locus.through.x;
  const dy = at.y - locus.through.y;
  const along = dx * locus.direction.x + dy * locus.direction.y;
  if (locus.ray && along < 0) return Math.hypot(dx, dy);
  return locus.direction.x * dy - locus.direction.y * dx;
}

/** Angle between two loci where they cross at `at`, radians in [0, π/2]. */
export function crossingAngle(first: Locus, second: Locus, at: Point): number {
  const a = normalAt(first, at);
  const b = normalAt(second, at);
  return Math.atan2(Math.abs(a.x * b.y - a.y * b.x), Math.abs(a.x * b.x + a.y * b.y));
}

/**
 * The other crossing of two loci that meet at `at`, by mirroring it: over the line of centres for two circles, over the
 * square from the centre for a circle and a line. Two lines have none; nor has a ray that would have to be run backwards.
 */
export function otherCrossing(first: Locus, second: Locus, at: Point): Point | undefined {
  const other = mirrored(first, second, at);
  if (!other || separation(other, at) < ONE_POINT) return undefined;
  for (const locus of [first, second]) {
    if (locus.shape !== 'line' || !locus.ray) continue;
    const ahead = (other.x - locus.through.x) * locus.direction.x + (other.y - locus.through.y) * locus.direction.y;
    if (ahead <= 0) return undefined;
  }
  return other;
}

function mirrored(first: Locus, second: Locus, at: Point): Point | undefined {
  if (first.shape === 'circle' && second.shape === 'circle') {
    const d = separation(first.centre, second.centre);
    if (d < ONE_POINT) return undefined;
    const ux = (second.centre.x - first.centre.x) / d;
    const uy = (second.centre.y - first.centre.y) / d;
    const off = ux * (at.y - first.centre.y) - uy * (at.x - first.centre.x);
    return { x: at.x + 2 * off * uy, y: at.y - 2 * off * ux };
  }
  const line = first.shape === 'line' ? first : second;
  const circle = first.shape === 'circle' ? first : second;
  if (line.shape !== 'line' || circle.shape !== 'circle') return undefined;
  const along = (at.x - circle.centre.x) * line.direction.x + (at.y - circle.centre.y) * line.direction.y;
  return { x: at.x - 2 * along * line.direction.x, y: at.y - 2 * along * line.direction.y };
}

/** Which of two crossings, by the greater difference as seen: upper, lower, right-hand or left-hand. */
export function sideOfTwo(at: Point, other: Point): 'upper' | 'lower' | 'right-hand' | 'left-hand' {
  const dx = at.x - other.x;
  const dy = at.y - other.y;
  if (Math.abs(dx) > Math.abs(dy)) return dx > 0 ? 'right-hand' : 'left-hand';
  return dy > 0 ? 'upper' : 'lower';
}

/** A landmark is only named where it is clearly nearer the right crossing than the wrong one. */
const CLEARLY_NEARER = 0.7;

/** Which crossing is meant, in words; undefined where there is only one. */
export function crossingWords(
  first: Locus,
  second: Locus,
  at: Point,
  metal: Metal,
  label: (id: string) => string,
): string | undefined {
  const other = otherCrossing(first, second, at);
  if (!other) return undefined;
  const words = [`the ${sideOfTwo(at, other)} of the two crossings`];
  if (
    first.shape === 'circle' &&
    second.shape === 'circle' &&
    first.told.kind === 'arc' &&
    second.told.kind === 'arc'
  ) {
    const turn =
      (second.centre.x - first.centre.x) * (at.y - first.centre.y) -
      (second.centre.y - first.centre.y) * (at.x - first.centre.x);
    const side = turn > 0 ? 'left' : 'right';
    words.push(`${side} of the line from ${label(first.told.from)} to ${label(second.told.from)}`);
  }
  const near = landmark(at, other, metal);
  if (near) words.push(`nearer ${label(near)}`);
  return words.join(', ');
}

function landmark(at: Point, other: Point, metal: Metal): string | undefined {
  let best: string | undefined;
  let nearest = Number.POSITIVE_INFINITY;
  for (const point of metal.points) {
    const d = separation(point.at, at);
    if (d < nearest && d < CLEARLY_NEARER * separation(point.at, other)) {
      nearest = d;
      best = point.id;
    }
  }
  return best;
}
