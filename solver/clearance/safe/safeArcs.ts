/**
 * Safe arcs: all the angles at which a round part can stand on a circle and clear everything by a stated gap.
 *
 * The distance from the part's centre to each obstacle changes from enough to too little only where the circle
 * crosses a curve at that distance: parallel lines, circles about corners, concentric arcs. All such angles are
 * gathered in closed form, and the pieces between them are tested in the middle, so nothing is sampled.
 */
import { endsOf, type Point, piecesOf, type Segment, signedDistanceToRegion } from '../../geometry/index.ts';
import type { Solid } from '../solids/solid.ts';

/** The circle on which the part may stand, and its own radius, mm. */
export interface SlideCircle {
  readonly centre: Point;
  readonly radius: number;
  readonly partRadius: number;
}

/** Something to keep clear of, by a gap of its own, mm. */
export interface Obstacle {
  readonly solid: Solid;
  readonly gap: number;
}

/** From one angle anticlockwise to another, radians in [0, 2π); `sweep` up to 2π. */
export interface SafeArc {
  readonly start: number;
  readonly sweep: number;
}

const TURN = 2 * Math.PI;

/** Every arc of the circle where all gaps are kept, in order of angle; none, or the whole turn, are answers too. */
export function safeArcs(slide: SlideCircle, obstacles: readonly Obstacle[]): readonly SafeArc[] {
  const angles = obstacles.flatMap((obstacle) => criticalAngles(slide, obstacle));
  const sorted = [...new Set(angles.map(reduce))].sort((a, b) => a - b);
  const first = sorted[0];
  if (first === undefined) return isSafe(slide, obstacles, 0) ? [{ start: 0, sweep: TURN }] : [];
  const safe = sorted.map((start, index) =>
    isSafe(slide, obstacles, (start + (sorted[index + 1] ?? first + TURN)) / 2),
  );
  return runsOf(sorted, safe);
}

/** Joins neighbouring safe pieces, also across angle 0. Piece i runs from angle i to the next one. */
function runsOf(angles: readonly number[], safe: readonly boolean[]): SafeArc[] {
  const count = angles.length;
  if (safe.every((piece) => piece)) return [{ start: 0, sweep: TURN }];
  const arcs: SafeArc[] = [];
  for (let i = 0; i < count; i++) {
    const before = safe[(i + count - 1) % count];
    if (!safe[i] || before) continue;
    let end = i;
    while (safe[end % count]) end++;
    const start = angles[i] ?? 0;
    const past = end >= count ? TURN : 0;
    arcs.push({ start, sweep: (angles[end % count] ?? 0) + past - start });
  }
  return arcs;
}

/** The safe angle nearest to a wanted one, or undefined where there is none. */
export function nearestSafeAngle(arcs: readonly SafeArc[], wanted: number): number | undefined {
  let best: number | undefined;
  for (const { start, sweep } of arcs) {
    const into = reduce(wanted - start);
    if (into <= sweep) return wanted;
    const candidate = into - sweep <= TURN - into ? start + sweep : start;
    if (best === undefined || turnBetween(candidate, wanted) < turnBetween(best, wanted)) best = candidate;
  }
  return best;
}

/** Smallest surplus over all obstacles at an angle, mm: how much more than the stated gap is left (negative: too near). */
export function surplusAt(slide: SlideCircle, obstacles: readonly Obstacle[], angle: number): number {
  const point: Point = {
    x: slide.centre.x + slide.radius * Math.cos(angle),
    y: slide.centre.y + slide.radius * Math.sin(angle),
  };
  return Math.min(
    ...obstacles.map(({ solid, gap }) => clearanceAt(solid, point) - slide.partRadius - gap),
    Number.POSITIVE_INFINITY,
  );
}

function isSafe(slide: SlideCircle, obstacles: readonly Obstacle[], angle: number): boolean {
  return surplusAt(slide, obstacles, angle) >= 0;
}

/** Distance from a point to the surface of a solid, negative inside it, mm. */
function clearanceAt(solid: Solid, point: Point): number {
  if (solid.shape === 'region') return signedDistanceToRegion(solid.region, point).distance;
  const d = Math.hypot(point.x - solid.centre.x, point.y - solid.centre.y);
  return Math.max(d - solid.outer, solid.inner > 0 ? solid.inner - d : Number.NEGATIVE_INFINITY);
}

/** Angles at which the part stands exactly at its gap from some edge or corner of the obstacle. */
function criticalAngles(slide: SlideCircle, { solid, gap }: Obstacle): number[] {
  const reach = slide.partRadius + gap;
  if (solid.shape === 'ring') {
    const radii = [solid.outer + reach, ...(solid.inner > reach ? [solid.inner - reach] : [])];
    return radii.flatMap((radius) => anglesOnCircle(slide, solid.centre, radius));
  }
  const pieces = [solid.region.outer, ...solid.region.holes].flatMap((outline) => piecesOf(outline));
  return pieces.flatMap((piece) => anglesAtReach(slide, piece, reach));
}

function anglesAtReach(slide: SlideCircle, piece: Segment, reach: number): number[] {
  const corners = endsOf(piece).flatMap((end) => anglesOnCircle(slide, end, reach));
  if (piece.kind === 'arc') {
    const radii = [piece.radius + reach, Math.abs(piece.radius - reach)];
    return [...corners, ...radii.flatMap((radius) => anglesOnCircle(slide, piece.centre, radius))];
  }
  return [...corners, ...anglesOnParallels(slide, piece.from, piece.to, reach)];
}

/** Where the slide circle meets another circle: two angles about the line of centres, or none. */
function anglesOnCircle(slide: SlideCircle, centre: Point, radius: number): number[] {
  const dx = centre.x - slide.centre.x;
  const dy = centre.y - slide.centre.y;
  const d = Math.hypot(dx, dy);
  if (d === 0 || slide.radius === 0 || radius <= 0) return [];
  const cosine = (d * d + slide.radius * slide.radius - radius * radius) / (2 * d * slide.radius);
  if (Math.abs(cosine) > 1) return [];
  const towards = Math.atan2(dy, dx);
  const half = Math.acos(cosine);
  return [towards - half, towards + half];
}

/** Where the slide circle meets the two parallels of a line at a distance. */
function anglesOnParallels(slide: SlideCircle, from: Point, to: Point, reach: number): number[] {
  const length = Math.hypot(to.x - from.x, to.y - from.y);
  if (length === 0 || slide.radius === 0) return [];
  const nx = -(to.y - from.y) / length;
  const ny = (to.x - from.x) / length;
  const offset = (from.x - slide.centre.x) * nx + (from.y - slide.centre.y) * ny;
  const normal = Math.atan2(ny, nx);
  return [offset - reach, offset + reach].flatMap((distance) => {
    const cosine = distance / slide.radius;
    if (Math.abs(cosine) > 1) return [];
    const half = Math.acos(cosine);
    return [normal - half, normal + half];
  });
}

function reduce(angle: number): number {
  const turned = angle % TURN;
  return turned < 0 ? turned + TURN : turned;
}

function turnBetween(a: number, b: number): number {
  const turned = reduce(a - b);
  return Math.min(turned, TURN - turned);
}
