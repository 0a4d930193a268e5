/** Divider settings from the two points on the metal that cross best at a place, and the best check distance. */

import { crossingAngle, normalOfLocus, type Point, separation } from '../../geometry/index.ts';
import { ONE_PLACE } from '../../tolerances.ts';
import { insideEdge, type Metal, type MetalLocus } from './metal.ts';
import { arcFrom } from './metalLoci.ts';

/** Arcs that cross at this angle or more are good: common practice, radians. */
const GOOD_CROSSING = (60 * Math.PI) / 180;
/** Shorter settings are hard to set on dividers, and crowd the marks, mm: common practice. */
const SHORTEST_SETTING = 6;
/** Only this many nearest points are tried as centres: farther ones need longer dividers and gain nothing. */
const NEAREST_TRIED = 40;

/**
 * Two arcs from points on the metal that cross at `at`: among good crossings the shortest settings, else the best angle.
 *
 * @returns undefined where the metal does not hold two points in different directions
 */
export function bestArcs(metal: Metal, at: Point): readonly [MetalLocus, MetalLocus] | undefined {
  const arcs = metal.points
    .map((point) => arcFrom(point, at))
    .filter((arc): arc is MetalLocus & { kind: 'circle' } => arc !== undefined && arc.kind === 'circle')
    .sort((a, b) => a.radius - b.radius)
    .slice(0, NEAREST_TRIED);
  let best: readonly [MetalLocus, MetalLocus] | undefined;
  let bestRank: readonly [number, number] = [0, 0];
  arcs.forEach((first, index) => {
    for (const second of arcs.slice(index + 1)) {
      const rank = rankOf(first, second, at);
      if (rank[0] > bestRank[0] || (rank[0] === bestRank[0] && rank[1] > bestRank[1])) {
        best = [first, second];
        bestRank = rank;
      }
    }
  });
  return best;
}

/** First the angle, cut off where it is good enough and lessened for very short settings; then the shorter settings. */
function rankOf(first: MetalLocus & { kind: 'circle' }, second: MetalLocus & { kind: 'circle' }, at: Point) {
  const angle = crossingAngle(first, second, at);
  const short = Math.min(first.radius, second.radius) < SHORTEST_SETTING ? 0.5 : 1;
  return [Math.min(angle, GOOD_CROSSING) * short, -(first.radius + second.radius)] as const;
}

/** Loci whose crossing is flatter than this hold no place at all, sine of the angle. */
const NO_CROSSING = 1e-6;

/** Sine of the crossing angle of two loci. */
export const crossingSine = (first: MetalLocus, second: MetalLocus, at: Point): number =>
  Math.sin(crossingAngle(first, second, at));

/** Do two loci settle a place at all? */
export const settles = (first: MetalLocus, second: MetalLocus, at: Point): boolean =>
  crossingSine(first, second, at) > NO_CROSSING;

/**
 * The distance that best shows an error of the step: from a point or edge that was not used, along the direction in
 * which the crossing is weakest.
 */
export function checkFor(
  metal: Metal,
  loci: readonly MetalLocus[],
  at: Point,
): { readonly from: string; readonly distance: number } | undefined {
  const used = new Set<string>();
  for (const { told } of loci) {
    if (told.kind === 'line') used.add(told.through).add(told.to);
    else used.add(told.from);
    if (told.kind === 'ray' && told.reference !== undefined) used.add(told.reference);
  }
  const weak = weakDirection(loci, at);
  let best: { from: string; distance: number } | undefined;
  let bestScore = 0;
  for (const point of metal.points) {
    const distance = separation(point.at, at);
    if (used.has(point.id) || distance < SHORTEST_SETTING) continue;
    // A point that was not struck now has no weak direction: any distance from another point checks it.
    const along =
      loci.length === 0 ? 1 : Math.abs((point.at.x - at.x) * weak.x + (point.at.y - at.y) * weak.y) / distance;
    // A little is taken off for length, so that of two equal checks the shorter is named.
    const score = along - distance * 1e-4;
    if (score > bestScore) {
      best = { from: point.id, distance };
      bestScore = score;
    }
  }
  if (best && bestScore > 0.3) return best;
  for (const edge of metal.edges) {
    const distance = insideEdge(edge, at);
    const score = Math.abs(weak[edge.axis]) - Math.abs(distance) * 1e-4;
    if (used.has(edge.name) || distance < ONE_PLACE || score <= bestScore) continue;
    best = { from: edge.name, distance };
    bestScore = score;
  }
  return best;
}

/** Unit vector of the direction in which equal errors of the settings move the crossing most. */
function weakDirection(loci: readonly MetalLocus[], at: Point): Point {
  let xx = 0;
  let xy = 0;
  let yy = 0;
  for (const locus of loci) {
    const n = normalOfLocus(locus, at);
    xx += n.x * n.x;
    xy += n.x * n.y;
    yy += n.y * n.y;
  }
  // The weak direction is the eigenvector of N'N with the smaller eigenvalue: square to the greater one's.
  const azimuth = 0.5 * Math.atan2(2 * xy, xx - yy) + Math.PI / 2;
  return { x: Math.cos(azimuth), y: Math.sin(azimuth) };
}
