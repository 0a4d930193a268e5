/**
 * What is on the metal while marking out: the datum, and the points struck so far, as seen on the marked face.
 */

import { type Curve, type Point, separation } from '../../geometry/index.ts';
import { ONE_PLACE } from '../../tolerances.ts';
import type { Datum, EdgeName, Face, MarkingLocus } from '../marks.ts';
import { datumEdgesOf, type PlateView, seenOutline } from '../plateView.ts';

/** Name of the centre of a round plate as a point on the metal. With its blank it can be no point's id. */
export const PLATE_CENTRE = 'plate centre';

/** A point that is struck already, as seen, mm. */
export interface MetalPoint {
  readonly id: string;
  readonly at: Point;
}

/** A line or circle on the metal on which the new point lies, with what the sheet says of it. */
export type MetalLocus = Curve & { readonly told: MarkingLocus };

/** A straight edge of the plate that runs along an axis, as seen. */
export interface EdgeLine {
  readonly name: EdgeName;
  /** Inward unit normal and the edge's coordinate along its axis. */
  readonly axis: 'x' | 'y';
  readonly at: number;
  readonly inward: 1 | -1;
}

/** What the first steps start from, found on this plate. */
export type ResolvedDatum =
  | { readonly kind: 'edges'; readonly upright: EdgeLine; readonly level: EdgeLine }
  | { readonly kind: 'centre'; readonly origin: Point }
  | { readonly kind: 'pair'; readonly first: string; readonly second: string; readonly origin: Point };

/** All that a step can be struck from. */
export interface Metal {
  readonly view: PlateView;
  readonly face: Face;
  readonly datum: ResolvedDatum;
  /** Straight edges that can be measured from, whatever the datum. */
  readonly edges: readonly EdgeLine[];
  /** Direction of the base line as seen, radians. */
  readonly base: number;
  readonly points: MetalPoint[];
}

/** The point on the metal at a place, if one is there. */
export function metalPointAt(metal: Metal, at: Point): MetalPoint | undefined {
  return metal.points.find((point) => separation(point.at, at) < ONE_PLACE);
}

/** The plate's straight edges, left and lower first. */
export function edgesOf(view: PlateView): readonly EdgeLine[] {
  const { left, right, lower, upper } = datumEdgesOf(view);
  const edges: EdgeLine[] = [];
  if (left !== undefined) edges.push({ name: 'left edge', axis: 'x', at: left, inward: 1 });
  if (right !== undefined) edges.push({ name: 'right edge', axis: 'x', at: right, inward: -1 });
  if (lower !== undefined) edges.push({ name: 'lower edge', axis: 'y', at: lower, inward: 1 });
  if (upper !== undefined) edges.push({ name: 'upper edge', axis: 'y', at: upper, inward: -1 });
  return edges;
}

/** How far inside an edge a point lies, mm (negative: outside). */
export const insideEdge = (edge: EdgeLine, at: Point): number => (at[edge.axis] - edge.at) * edge.inward;

/** Candidates for a datum pair: settled points as seen, in the order of construction. */
export interface DatumCandidates {
  readonly settled: readonly MetalPoint[];
  readonly drilled: readonly MetalPoint[];
}

/**
 * The datum to work from: the one asked for where the plate has it, else two drilled holes, else the edges,
 * else the centre of a round plate, else the first two points.
 */
export function resolveDatum(
  view: PlateView,
  candidates: DatumCandidates,
  wanted?: Datum,
): { readonly datum: ResolvedDatum; readonly base: number; readonly asked: boolean } {
  const edges = edgesOf(view);
  const tries: (() => { datum: ResolvedDatum; base: number } | undefined)[] = [];
  const byEdges = () => edgeDatum(edges);
  const byCentre = () => centreDatum(view);
  if (wanted?.kind === 'pair') tries.push(() => pairOf(candidates.settled, wanted.first, wanted.second));
  if (wanted?.kind === 'edges') tries.push(byEdges);
  if (wanted?.kind === 'centre') tries.push(byCentre);
  const asked = tries[0]?.();
  if (asked) return { ...asked, asked: true };
  const usual = farthestPair(candidates.drilled) ?? byEdges() ?? byCentre() ?? firstPair(candidates.settled);
  const bare = { datum: { kind: 'centre', origin: { x: 0, y: 0 } } as const, base: 0 };
  return { ...(usual ?? bare), asked: wanted === undefined };
}

function edgeDatum(edges: readonly EdgeLine[]): { datum: ResolvedDatum; base: number } | undefined {
  const upright = edges.find((edge) => edge.axis === 'x');
  const level = edges.find((edge) => edge.axis === 'y');
  return upright && level ? { datum: { kind: 'edges', upright, level }, base: 0 } : undefined;
}

function centreDatum(view: PlateView): { datum: ResolvedDatum; base: number } | undefined {
  if (view.plate?.outline.kind !== 'circle') return undefined;
  const outline = seenOutline(view, view.plate.outline);
  if (outline.kind !== 'circle') return undefined;
  return { datum: { kind: 'centre', origin: { x: outline.centre[0], y: outline.centre[1] } }, base: 0 };
}

function pairFrom(first: MetalPoint, second: MetalPoint): { datum: ResolvedDatum; base: number } {
  const base = Math.atan2(second.at.y - first.at.y, second.at.x - first.at.x);
  return { datum: { kind: 'pair', first: first.id, second: second.id, origin: first.at }, base };
}

function pairOf(points: readonly MetalPoint[], firstId: string, secondId: string) {
  const first = points.find((point) => point.id === firstId);
  const second = points.find((point) => point.id === secondId);
  return first && second && separation(first.at, second.at) > ONE_PLACE ? pairFrom(first, second) : undefined;
}

function farthestPair(points: readonly MetalPoint[]) {
  let best: { first: MetalPoint; second: MetalPoint; d: number } | undefined;
  points.forEach((first, index) => {
    for (const second of points.slice(index + 1)) {
      const d = separation(first.at, second.at);
      if (d > Math.max(ONE_PLACE, best?.d ?? 0)) best = { first, second, d };
    }
  });
  return best ? pairFrom(best.first, best.second) : undefined;
}

function firstPair(points: readonly MetalPoint[]) {
  const first = points[0];
  if (!first) return undefined;
  const second = points.find((point) => separation(point.at, first.at) > ONE_PLACE);
  return second ? pairFrom(first, second) : undefined;
}
