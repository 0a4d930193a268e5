/**
 * An outline moved out of or into the metal by half a kerf or a cutter's radius.
 *
 * The arcs are flattened, moved by Clipper2 (a general polygon library; rounded corners), and fitted with arcs again.
 */

import { areaD, EndType, inflatePathsD, JoinType, type PathD } from 'clipper2-ts';
import type { Point } from '../../geometry/index.ts';
import { asPoint, type OutlineShape, type OutlineVertex, piecesOf, pointAtAngle } from '../../geometry/index.ts';
import { bulgeThrough, missOfArc, type Vertex } from './arcFit.ts';

/** Decimals of a millimetre that the polygon library keeps. */
const DECIMALS = 6;

/** Points along an outline, no chord farther from its arc than `sag`, mm. */
export function flattened(outline: OutlineShape, sag: number): Point[] {
  if (outline.kind === 'circle') return arcPoints(asPoint(outline.centre), outline.radius, 0, 2 * Math.PI, sag);
  const points: Point[] = [];
  const pieces = piecesOf(outline);
  for (const [i, piece] of pieces.entries()) {
    const vertex = outline.vertices[i] as OutlineVertex; // a piece for each vertex
    points.push({ x: vertex.x, y: vertex.y });
    if (piece.kind === 'line') continue;
    const inner = arcPoints(piece.centre, piece.radius, piece.start, piece.sweep, sag).slice(1);
    points.push(...(vertex.bulge > 0 ? inner : inner.reverse()));
  }
  return points;
}

function arcPoints(centre: Point, radius: number, start: number, sweep: number, sag: number): Point[] {
  const widest = 2 * Math.acos(Math.max(0, 1 - sag / radius));
  const count = Math.max(1, Math.ceil(sweep / widest));
  return Array.from({ length: count }, (_, i) => pointAtAngle(centre, radius, start + (sweep * i) / count));
}

/** Outlines after they were moved, lengths in mm. */
export interface MovedOutlines {
  readonly outlines: readonly OutlineShape[];
  /** Corners that the round cutter cannot reach: area left standing, mm². */
  readonly left: number;
}

/**
 * Moves a closed outline outwards (`by` > 0) or inwards; it may fall apart or vanish.
 * @param tolerance largest miss of the new arcs, mm
 */
export function offsetOutline(outline: OutlineShape, by: number, tolerance: number): MovedOutlines {
  if (outline.kind === 'circle') {
    const radius = outline.radius + by;
    return { outlines: radius > 0 ? [{ ...outline, radius }] : [], left: 0 };
  }
  const sag = tolerance / 4;
  const path: PathD = flattened(outline, sag).map(({ x, y }) => ({ x, y }));
  const inflate = (paths: PathD[], delta: number) =>
    inflatePathsD(paths, delta, JoinType.Round, EndType.Polygon, 2, DECIMALS, sag);
  const moved = inflate([path], by);
  const back = inflate(moved, -by);
  const area = (paths: PathD[]) => paths.reduce((sum, each) => sum + areaD(each), 0);
  return {
    outlines: moved.map((each) => ({
      kind: 'path',
      vertices: refitted(
        each.map(({ x, y }) => ({ x, y })),
        tolerance / 2,
      ),
    })),
    left: Math.max(0, Math.abs(area(back) - area([path]))),
  };
}

/** A closed polygon as arcs and lines through some of its points, none of its points or sides missed by more than `tolerance`. */
export function refitted(points: readonly Point[], tolerance: number): Vertex[] {
  const n = points.length;
  const at = (i: number) => points[i % n] as Point; // index within the polygon
  const fits = (from: number, to: number): number | undefined => {
    const [a, b] = [at(from), at(to)];
    const bulge = to - from === 1 ? 0 : bulgeThrough(a, at(Math.floor((from + to) / 2)), b);
    if (!(Math.abs(bulge) < 1)) return undefined;
    for (let i = from; i < to; i++) {
      const [p, q] = [at(i), at(i + 1)];
      if (missOfArc(a, b, bulge, q) > tolerance) return undefined;
      if (to - from > 1 && missOfArc(a, b, bulge, { x: (p.x + q.x) / 2, y: (p.y + q.y) / 2 }) > tolerance) {
        return undefined;
      }
    }
    return bulge;
  };
  const vertices: Vertex[] = [];
  const start = sharpest(points);
  for (let from = start; from < start + n; ) {
    let [to, bulge] = [from + 1, 0];
    for (let step = 1; step >= 1; ) {
      const next = Math.min(start + n, to + step);
      const tried = next > to ? fits(from, next) : undefined;
      if (tried === undefined) step = step > 1 ? Math.floor(step / 2) : 0;
      else [to, bulge, step] = [next, tried, step * 2];
    }
    vertices.push({ x: at(from).x, y: at(from).y, bulge });
    from = to;
  }
  return vertices;
}

/** Where the polygon turns most: a corner to begin at. */
function sharpest(points: readonly Point[]): number {
  let [best, most] = [0, -1];
  for (let i = 0; i < points.length; i++) {
    const n = points.length;
    const [a, b, c] = [points[(i + n - 1) % n], points[i], points[(i + 1) % n]] as [Point, Point, Point]; // three indices of the polygon
    const turn = Math.abs(Math.atan(bulgeThrough(a, b, c)));
    if (turn > most) [best, most] = [i, turn];
  }
  return best;
}
