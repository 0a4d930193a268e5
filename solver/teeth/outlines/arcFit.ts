/**
 * Curves as chains of circular arcs, few and within a stated tolerance, joined exactly: each arc starts at the very
 * vertex where the last one ended.
 */
import type { Point } from '../../geometry/index.ts';

/** A corner of a path of arcs, mm. */
export interface Vertex {
  readonly x: number;
  readonly y: number;
  /** Tangent of a quarter of the included angle of the arc to the next vertex; + turns left. */
  readonly bulge: number;
}

/** The arc through three points in order, as bulge from the first to the last. */
export function bulgeThrough(a: Point, via: Point, b: Point): number {
  const [ux, uy] = [via.x - a.x, via.y - a.y];
  const [vx, vy] = [b.x - via.x, b.y - via.y];
  // The chords a–via and via–b turn by half of the arc's included angle.
  const turn = Math.atan2(ux * vy - uy * vx, ux * vx + uy * vy);
  return Math.tan(turn / 2);
}

/** Distance of a point from the arc's circle (or from the chord's line where the arc is straight), mm. */
export function missOfArc(a: Point, b: Point, bulge: number, point: Point): number {
  const [dx, dy] = [b.x - a.x, b.y - a.y];
  const chord = Math.hypot(dx, dy);
  if (chord === 0) return Math.hypot(point.x - a.x, point.y - a.y);
  const [px, py] = [point.x - (a.x + b.x) / 2, point.y - (a.y + b.y) / 2];
  const along = (px * dx + py * dy) / chord;
  const left = (py * dx - px * dy) / chord;
  if (Math.abs(bulge) < 1e-12) return Math.abs(left);
  // The centre lies on the chord's bisector, (1/bulge − bulge)/4 chords to the left for a left turn.
  const centre = ((1 / bulge - bulge) * chord) / 4;
  const radius = ((1 / Math.abs(bulge) + Math.abs(bulge)) * chord) / 4;
  return Math.abs(Math.hypot(along, left - centre) - radius);
}

/** Places along an arc's stretch at which its miss is measured. */
const PROBES = 12;

/** A curve as arcs, with how far they are from it. */
export interface FittedArcs {
  /** First point of the curve to the last; the last vertex has bulge 0. */
  readonly vertices: readonly Vertex[];
  /** Largest miss found, mm. */
  readonly miss: number;
}

/**
 * Arcs along `curve(t)`, t from 0 to 1, none missing it by more than `tolerance`. Each arc is made as long as it can be.
 */
export function fitArcs(curve: (t: number) => Point, tolerance: number): FittedArcs {
  const vertices: Vertex[] = [];
  let miss = 0;
  let t = 0;
  while (t < 1) {
    const arc = longestArc(curve, t, tolerance);
    const { x, y } = curve(t);
    vertices.push({ x, y, bulge: arc.bulge });
    miss = Math.max(miss, arc.miss);
    t = arc.to;
  }
  const { x, y } = curve(1);
  return { vertices: [...vertices, { x, y, bulge: 0 }], miss };
}

/** Shortest stretch of t that is not divided further: rounding decides below it. */
const SHORTEST = 1e-5;

function longestArc(curve: (t: number) => Point, from: number, tolerance: number) {
  const tried = (to: number) => {
    const [a, via, b] = [curve(from), curve((from + to) / 2), curve(to)];
    const bulge = bulgeThrough(a, via, b);
    let miss = 0;
    for (let i = 1; i < PROBES; i++) {
      miss = Math.max(miss, missOfArc(a, b, bulge, curve(from + ((to - from) * i) / PROBES)));
    }
    return { to, bulge, miss };
  };
  let best = tried(1);
  if (best.miss <= tolerance) return best;
  let [low, high] = [from, 1];
  best = tried(Math.min(1, from + SHORTEST));
  low = best.to;
  for (let i = 0; i < 16 && high - low > SHORTEST; i++) {
    const arc = tried((low + high) / 2);
    if (arc.miss <= tolerance) {
      best = arc;
      low = arc.to;
    } else {
      high = arc.to;
    }
  }
  return best;
}
