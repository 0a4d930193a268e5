/** The edge of a whole wheel's teeth as one closed path of arcs and lines. */
import type { Point } from '../../geometry/index.ts';
import { HOLDS } from '../../tolerances.ts';
import { type FlankPiece, halfAngleAt, type ToothForm } from '../forms/toothForm.ts';
import { bulgeThrough, fitArcs, type Vertex } from './arcFit.ts';

/** A point of the leading flank (positive angles). */
function flankPoint(piece: FlankPiece, radius: number): Point {
  const half = Math.max(0, piece.half(radius));
  return { x: radius * Math.cos(half), y: radius * Math.sin(half) };
}

/** One piece from its smaller to its larger radius; circles and lines exactly, the rest fitted. */
function pieceArcs(piece: FlankPiece, tolerance: number): { vertices: readonly Vertex[]; miss: number } {
  const width = piece.to - piece.from;
  // Slow at both ends: where a flank touches a circle about the centre its angle changes with the root of the radius.
  const radiusAt = (t: number) => piece.from + (width * (1 - Math.cos(Math.PI * t))) / 2;
  if (piece.straight || piece.circle) {
    const [a, via, b] = [piece.from, radiusAt(0.5), piece.to].map((radius) => flankPoint(piece, radius)) as [
      Point,
      Point,
      Point,
    ]; // three radii give three points
    const bulge = piece.straight ? 0 : bulgeThrough(a, via, b);
    return {
      vertices: [
        { x: a.x, y: a.y, bulge },
        { x: b.x, y: b.y, bulge: 0 },
      ],
      miss: 0,
    };
  }
  return fitArcs((t) => flankPoint(piece, radiusAt(t)), tolerance);
}

/** Arcs of one flank from the root to the tip. */
function flankArcs(form: ToothForm, tolerance: number): { vertices: readonly Vertex[]; miss: number } {
  const joined: Vertex[] = [];
  let miss = 0;
  for (const piece of form.pieces) {
    const arcs = pieceArcs(piece, tolerance);
    miss = Math.max(miss, arcs.miss);
    joined.pop();
    joined.push(...arcs.vertices);
  }
  return { vertices: form.internal ? reversed(joined) : joined, miss };
}

/** The same path walked the other way. */
export function reversed(vertices: readonly Vertex[]): Vertex[] {
  const back = [...vertices].reverse();
  return back.map((vertex, i) => {
    const next = back[i + 1];
    return { x: vertex.x, y: vertex.y, bulge: next && next.bulge !== 0 ? -next.bulge : 0 };
  });
}

const mirrored = (vertices: readonly Vertex[]): Vertex[] =>
  vertices.map(({ x, y, bulge }) => ({ x, y: -y, bulge: bulge === 0 ? 0 : -bulge }));

/** A path turned about the origin. */
export function turned(vertices: readonly Vertex[], angle: number): Vertex[] {
  const [c, s] = [Math.cos(angle), Math.sin(angle)];
  return vertices.map(({ x, y, bulge }) => ({ x: c * x - s * y, y: s * x + c * y, bulge }));
}

/** The toothed edge of a wheel as one closed path. */
export interface ToothPath {
  /** Closed: the last vertex joins the first. Anticlockwise. */
  readonly vertices: readonly Vertex[];
  /** Largest miss of the fitted arcs, mm. */
  readonly miss: number;
}

/** The edge of all teeth, a tooth's centre line at `phase` (radians), anticlockwise. */
export function toothPath(form: ToothForm, tolerance: number, phase = 0): ToothPath {
  const flank = flankArcs(form, tolerance);
  const up = mirrored(flank.vertices);
  const down = reversed(flank.vertices);
  const step = (2 * Math.PI) / form.teeth;
  const tooth = [...closedBy(up, land(form, form.tip, 2)), ...closedBy(down, rootLand(form, step))];
  const vertices: Vertex[] = [];
  for (let k = 0; k < form.teeth; k++) vertices.push(...turned(tooth, phase + k * step));
  return { vertices, miss: flank.miss };
}

/** Half-angle at the tip or root doubled: the land there, radians, or 0 when it is shorter than rounding. */
function land(form: ToothForm, radius: number, times: number): number {
  const angle = times * Math.max(0, halfAngleAt(form, radius));
  return angle * radius > HOLDS ? angle : 0;
}

function rootLand(form: ToothForm, step: number): number {
  const angle = step - 2 * Math.max(0, halfAngleAt(form, form.root));
  return angle * form.root > HOLDS ? angle : 0;
}

/** Ends a stretch with an arc about the origin of that angle, or drops its last point when the next has the same place. */
function closedBy(vertices: readonly Vertex[], angle: number): Vertex[] {
  const last = vertices.at(-1);
  if (!last || angle === 0) return vertices.slice(0, -1);
  return [...vertices.slice(0, -1), { x: last.x, y: last.y, bulge: Math.tan(angle / 4) }];
}
