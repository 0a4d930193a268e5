/**
 * A locus: where a point may lie. A point, a circle, a line, or a ray that ends at its start.
 *
 * One set of answers for planting, marking out, snapping and drawing: how far a place is off, the normal there, the
 * crossings of two loci, and the other crossing. Nothing lies behind the start of a ray.
 */

import { ONE_PLACE } from '../tolerances.ts';
import { Meet, meetLoci, Shape } from './meetLoci.ts';
import { type Point, separation } from './point.ts';

/** Where a point may lie. `along` is a unit vector; a ray starts at `through`. */
export type Locus =
  | { readonly kind: 'point'; readonly at: Point }
  | { readonly kind: 'circle'; readonly centre: Point; readonly radius: number }
  | { readonly kind: 'line' | 'ray'; readonly through: Point; readonly along: Point };

type Straight = Extract<Locus, { kind: 'line' | 'ray' }>;
/** A locus with a run: all but a point. */
export type Curve = Exclude<Locus, { kind: 'point' }>;

/** How far along a line or ray from `through` the foot of a place is, mm; negative behind it. */
const footAlong = ({ through, along }: Straight, at: Point): number =>
  (at.x - through.x) * along.x + (at.y - through.y) * along.y;

/** The place of the locus nearest to a place; for the centre of a circle, the one to its right. */
export function nearestOnLocus(locus: Locus, to: Point): Point {
  if (locus.kind === 'point') return locus.at;
  if (locus.kind === 'circle') {
    const { centre, radius } = locus;
    const away = separation(centre, to);
    const [ux, uy] = away > 0 ? [(to.x - centre.x) / away, (to.y - centre.y) / away] : [1, 0];
    return { x: centre.x + radius * ux, y: centre.y + radius * uy };
  }
  const foot = footAlong(locus, to);
  const t = locus.kind === 'ray' ? Math.max(0, foot) : foot;
  return { x: locus.through.x + t * locus.along.x, y: locus.through.y + t * locus.along.y };
}

/** How far a place is from the nearest place of a locus, mm. */
export const distanceToLocus = (locus: Locus, from: Point): number => separation(nearestOnLocus(locus, from), from);

/**
 * Signed distance of a place from a locus, mm: positive outside a circle and left of a line; for a point, and for a ray
 * behind its start, the plain distance.
 */
export function offLocus(locus: Locus, at: Point): number {
  if (locus.kind === 'point') return separation(locus.at, at);
  if (locus.kind === 'circle') return separation(locus.centre, at) - locus.radius;
  const { through, along } = locus;
  if (locus.kind === 'ray' && footAlong(locus, at) < 0) return separation(through, at);
  return along.x * (at.y - through.y) - along.y * (at.x - through.x);
}

/** Unit normal of a locus at a place on it: away from a circle's centre, to the left of a line. */
export function normalOfLocus(locus: Curve, at: Point): Point {
  if (locus.kind === 'circle') {
    return { x: (at.x - locus.centre.x) / locus.radius, y: (at.y - locus.centre.y) / locus.radius };
  }
  return { x: -locus.along.y, y: locus.along.x };
}

/** Angle between two loci where they cross at `at`, radians in [0, π/2]. */
export function crossingAngle(first: Curve, second: Curve, at: Point): number {
  const a = normalOfLocus(first, at);
  const b = normalOfLocus(second, at);
  return Math.atan2(Math.abs(a.x * b.y - a.y * b.x), Math.abs(a.x * b.x + a.y * b.y));
}

function packed(locus: Curve): Float64Array {
  if (locus.kind === 'circle') {
    return Float64Array.of(Shape.circle, locus.centre.x, locus.centre.y, locus.radius, 0);
  }
  const { kind, through, along } = locus;
  return Float64Array.of(kind === 'ray' ? Shape.ray : Shape.line, through.x, through.y, along.x, along.y);
}

/**
 * Crossings of two loci: none, one (where they touch too) or two; loci that coincide have none, and a point has none.
 *
 * Two circles: the one left of the line from the first centre to the second comes first. Nothing behind a ray's start.
 */
export function crossingsOfLoci(first: Locus, second: Locus): readonly Point[] {
  if (first.kind === 'point' || second.kind === 'point') return [];
  const out = new Float64Array(8);
  const meet = meetLoci(packed(first), packed(second), 0, 0, out);
  const [ax, ay, bx, by] = out as unknown as [number, number, number, number]; // it has eight numbers
  if (meet === Meet.two) {
    return [
      { x: ax, y: ay },
      { x: bx, y: by },
    ];
  }
  return meet === Meet.one || meet === Meet.touch ? [{ x: ax, y: ay }] : [];
}

/**
 * The other crossing of two loci that meet at `at`, by mirroring it: over the line of centres for two circles, over the
 * square from the centre for a circle and a line. Two lines have none; nor has a ray that would have to be run backwards.
 */
export function otherCrossingOfLoci(first: Locus, second: Locus, at: Point): Point | undefined {
  const other = mirrored(first, second, at);
  if (!other || separation(other, at) < ONE_PLACE) return undefined;
  const behind = [first, second].some((locus) => locus.kind === 'ray' && footAlong(locus, other) <= 0);
  return behind ? undefined : other;
}

function mirrored(first: Locus, second: Locus, at: Point): Point | undefined {
  if (first.kind === 'point' || second.kind === 'point') return undefined;
  if (first.kind === 'circle' && second.kind === 'circle') {
    const d = separation(first.centre, second.centre);
    if (d < ONE_PLACE) return undefined;
    const ux = (second.centre.x - first.centre.x) / d;
    const uy = (second.centre.y - first.centre.y) / d;
    const off = ux * (at.y - first.centre.y) - uy * (at.x - first.centre.x);
    return { x: at.x + 2 * off * uy, y: at.y - 2 * off * ux };
  }
  const [circle, line] = first.kind === 'circle' ? [first, second] : [second, first];
  if (circle.kind !== 'circle' || line.kind === 'circle') return undefined;
  const along = (at.x - circle.centre.x) * line.along.x + (at.y - circle.centre.y) * line.along.y;
  return { x: at.x - 2 * along * line.along.x, y: at.y - 2 * along * line.along.y };
}
