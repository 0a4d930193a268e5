/**
 * Safe places: where a loose arbor, post or mark can stand so that everything that moves with it clears everything else.
 * A post that rules settle on a circle is asked for its safe arcs, in closed form.
 *
 * A point with one free motion is followed along its curve both ways; one with two is set on a grid over the case.
 * At every place all rules hold (it is a drag of the planting), and the gaps are read with the shake of the bearings.
 * The ends of safe pieces are closed in on by halving.
 */

import type { Point } from '../../geometry/index.ts';
import type { PointId } from '../../movement/ids.ts';
import type { Edit } from '../../movement/index.ts';
import type { Post } from '../../movement/schema.ts';
import { startDrag } from '../../planting/index.ts';
import type { PlacedMovement } from '../../planting/placed.ts';
import { TOUCH } from '../../tolerances.ts';
import { groundOf, type RoomMeasure, roomMeasureOf } from '../findPlanting/roomOf.ts';
import { postSlidToSafe, safeArcsOfPost, turnedPost } from '../remedies/slidePost.ts';

/** How finely and how far safe places are looked for. */
export interface SafeOptions {
  /** Distance of neighbouring places that are asked, mm; 0.5 along a curve and a fortieth of the case on a grid when absent. */
  readonly step?: number;
  /** How far along the curve to look each way, mm; once round the case when absent. */
  readonly reach?: number;
}

/** Why there is no safe place: the point is not loose by itself, or nowhere on its curve, its circle or in the case is clear. */
export type NoSafePlace = { readonly kind: 'settled' | 'curve' | 'circle' | 'case' };

/** Safe places along a curve or over an area, or why there are none to tell. */
export type SafePlaces =
  | { readonly kind: 'curve'; readonly pieces: readonly (readonly Point[])[] }
  /** Middles of the safe cells, each `cell` mm wide. */
  | { readonly kind: 'region'; readonly cell: number; readonly middles: readonly Point[] }
  | { readonly kind: 'none'; readonly why: NoSafePlace };

/** Step along a curve, mm, and cells across half of the case. */
const STEP = 0.5;
const CELLS = 20;
/** Steps along a curve each way, at most. */
const MOST_STEPS = 400;
/** Half of the largest circle that runs from corner to corner of a square ground, over the half side of the square. */
const HALF_ROUND = 2 * Math.SQRT2 * Math.PI;
/** Ends of safe pieces are known to this, mm: a tenth of what a maker can set. */
const END = 1e-4;

/** May a point be asked for safe places: it is loose, or a post that stands on a circle? */
export function canSlide(placed: PlacedMovement, id: PointId): boolean {
  const place = placed.places.get(id);
  return place?.state === 'loose' || settledPost(placed, id) !== undefined;
}

/** A post that rules settle on a circle, which it could be turned along. */
function settledPost(placed: PlacedMovement, id: PointId): Post | undefined {
  const post = placed.movement.posts.find((each) => each.id === id);
  if (!post || placed.places.get(id)?.state !== 'planted') return undefined;
  return turnedPost(placed, post, 1) && post;
}

/** The safe places of a loose point, or of a post on its circle. */
export function safePlacesOf(placed: PlacedMovement, id: PointId, options: SafeOptions = {}): SafePlaces {
  const place = placed.places.get(id);
  const post = settledPost(placed, id);
  if (post) return safeArcPieces(placed, post);
  if (place?.state !== 'loose' || place.free.length === 0) {
    return { kind: 'none', why: { kind: 'settled' } };
  }
  const way = new Way(placed, id, roomMeasureOf(placed));
  const { middle, reach } = groundOf(placed);
  if (place.free.length === 1) {
    const step = options.step ?? STEP;
    const pieces = way.curve(step, options.reach ?? HALF_ROUND * reach);
    return pieces.length > 0 ? { kind: 'curve', pieces } : { kind: 'none', why: { kind: 'curve' } };
  }
  const cell = options.step ?? reach / CELLS;
  const middles = way.grid(middle, reach, cell);
  return middles.length > 0 ? { kind: 'region', cell, middles } : { kind: 'none', why: { kind: 'case' } };
}

/** Degrees between two points of an arc that is handed over as a row of points. */
const ARC_STEP = 2;

function safeArcPieces(placed: PlacedMovement, post: Post): SafePlaces {
  const safe = safeArcsOfPost(placed, post);
  if (!safe || safe.arcs.length === 0) return { kind: 'none', why: { kind: 'circle' } };
  const { centre, radius } = safe.slide;
  const pieces = safe.arcs.map(({ start, sweep }) => {
    const count = Math.max(1, Math.ceil((sweep * 180) / Math.PI / ARC_STEP));
    return Array.from({ length: count + 1 }, (_, i): Point => {
      const angle = start + (sweep * i) / count;
      return { x: centre.x + radius * Math.cos(angle), y: centre.y + radius * Math.sin(angle) };
    });
  });
  return { kind: 'curve', pieces };
}

/** The edit that slides a loose point, or a post on its circle, to the nearest safe place, and how far that is; undefined where it is safe, or nowhere is. */
export function slideToSafe(
  placed: PlacedMovement,
  id: PointId,
  options: SafeOptions = {},
): { readonly edit: Edit; readonly to: Point; readonly distance: number } | undefined {
  const place = placed.places.get(id);
  const post = settledPost(placed, id);
  const turned = post && postSlidToSafe(placed, post);
  if (post && place && turned) {
    const to = { x: turned.at[0], y: turned.at[1] };
    const distance = Math.hypot(to.x - place.x, to.y - place.y);
    return distance < END ? undefined : { edit: turned.candidate.edit, to, distance };
  }
  const safe = safePlacesOf(placed, id, options);
  if (post || !place || safe.kind === 'none') return undefined;
  const points = safe.kind === 'curve' ? safe.pieces.flat() : safe.middles;
  const away = (point: Point): number => Math.hypot(point.x - place.x, point.y - place.y);
  const [nearest] = [...points].sort((a, b) => away(a) - away(b));
  if (!nearest || away(nearest) < END) return undefined;
  const drag = startDrag(placed, id);
  drag.to(nearest.x, nearest.y);
  const edit = drag.release();
  return edit && { edit, to: nearest, distance: away(nearest) };
}

/** A place that was tried, with the planting it gives. */
interface Stop {
  readonly point: Point;
  readonly placed: PlacedMovement;
}

/** Asks places of one point one after another. */
class Way {
  private readonly placed: PlacedMovement;
  private readonly id: PointId;
  private readonly room: RoomMeasure;

  constructor(placed: PlacedMovement, id: PointId, room: RoomMeasure) {
    this.placed = placed;
    this.id = id;
    this.room = room;
  }

  /** A gap that a rule keeps at just what is owed is kept: the same touch is allowed as where gaps are checked. */
  private isSafe({ placed }: Stop): boolean {
    return placed.disagreements.length === 0 && this.room.of(placed).surplus >= -TOUCH;
  }

  /** Gaps that are the same at every stop are no concern of this point. */
  private narrow(stops: readonly Stop[]): void {
    for (const { placed } of stops) this.room.of(placed);
    this.room.narrow();
  }

  curve(step: number, reach: number): readonly (readonly Point[])[] {
    const start = this.stopAt(this.placed);
    if (!start) return [];
    const ahead = this.followed(start, step, reach, 1);
    const closes = ahead.length > 3 && isNear(ahead.at(-1), start, step);
    const behind = closes ? [] : this.followed(start, step, reach, -1, ahead.at(-1));
    const stops = [...behind.reverse(), start, ...ahead];
    this.narrow(stops);
    const safe = stops.map((stop) => this.isSafe(stop));
    const pieces: Point[][] = [];
    stops.forEach((stop, i) => {
      if (!safe[i]) return;
      const before = stops[i - 1];
      if (!safe[i - 1]) pieces.push(before ? [this.endBetween(stop, before)] : []);
      pieces.at(-1)?.push(stop.point);
      const next = stops[i + 1];
      if (next && !safe[i + 1]) pieces.at(-1)?.push(this.endBetween(stop, next));
    });
    return pieces;
  }

  /** Stops along the curve one way, until it comes back, ends, is long enough, or meets the end of the other way. */
  private followed(start: Stop, step: number, reach: number, sense: 1 | -1, met?: Stop): Stop[] {
    const drag = startDrag(this.placed, this.id);
    const [free] = this.placed.places.get(this.id)?.free ?? [];
    let heading = { x: sense * (free?.x ?? 0), y: sense * (free?.y ?? 0) };
    let at = start;
    const stops: Stop[] = [];
    for (let n = 1; n <= MOST_STEPS && n * step <= reach; n++) {
      const next = this.stopAt(drag.to(at.point.x + step * heading.x, at.point.y + step * heading.y));
      const gone = next && Math.hypot(next.point.x - at.point.x, next.point.y - at.point.y);
      if (!next || gone === undefined || gone < step / 10) break;
      heading = { x: (next.point.x - at.point.x) / gone, y: (next.point.y - at.point.y) / gone };
      stops.push(next);
      at = next;
      if (n > 3 && (isNear(next, start, step) || isNear(met, next, step))) break;
    }
    return stops;
  }

  private stopAt(placed: PlacedMovement): Stop | undefined {
    const place = placed.places.get(this.id);
    return place && { point: { x: place.x, y: place.y }, placed };
  }

  /** The last safe point towards one that is not. */
  private endBetween(safe: Stop, not: Stop): Point {
    const drag = startDrag(this.placed, this.id);
    drag.to(safe.point.x, safe.point.y);
    let [inside, outside] = [safe, not];
    while (Math.hypot(inside.point.x - outside.point.x, inside.point.y - outside.point.y) > END) {
      const middle = { x: (inside.point.x + outside.point.x) / 2, y: (inside.point.y + outside.point.y) / 2 };
      const stop = this.stopAt(drag.to(middle.x, middle.y));
      if (!stop) break;
      // On a curve the middle of the chord is pulled onto it; where it no longer moves, the end is known.
      const isStuck = [inside, outside].some(
        ({ point }) => Math.hypot(point.x - stop.point.x, point.y - stop.point.y) < END / 10,
      );
      if (this.isSafe(stop)) inside = stop;
      else outside = stop;
      if (isStuck) break;
    }
    return inside.point;
  }

  grid({ x: x0, y: y0 }: Point, reach: number, cell: number): readonly Point[] {
    const drag = startDrag(this.placed, this.id);
    const count = Math.floor(reach / cell);
    const stops: Stop[] = [];
    for (let row = -count; row <= count; row++) {
      for (let n = -count; n <= count; n++) {
        // To and fro, so that no step of the drag is long.
        const column = row % 2 === 0 ? n : -n;
        const wanted = { x: x0 + column * cell, y: y0 + row * cell };
        const stop = this.stopAt(drag.to(wanted.x, wanted.y));
        if (stop && Math.hypot(stop.point.x - wanted.x, stop.point.y - wanted.y) < cell / 2) stops.push(stop);
      }
    }
    this.narrow(stops);
    return stops.filter((stop) => this.isSafe(stop)).map(({ point }) => point);
  }
}

function isNear(stop: Stop | undefined, other: Stop, step: number): boolean {
  return stop !== undefined && Math.hypot(stop.point.x - other.point.x, stop.point.y - other.point.y) < 0.75 * step;
}
