/**
 * What a dragged place would settle on: of all rules that could be kept near it, the nearest one, or two that cross.
 *
 * Candidates come from `snapCandidates.ts`; here is only the choice. Nothing is changed: the gesture plants the
 * movement with the chosen rules to show what it would be, and keeps them when the pointer is released.
 */

import {
  crossingAngle,
  crossingsOfLoci,
  distanceToLocus,
  type Locus,
  nearestOnLocus,
  type Point,
} from '../../solver/geometry/index.ts';
import type { DraftRule } from '../../solver/planting/index.ts';

/** A rule that a place could settle on. */
export interface SnapCandidate {
  /** Stable while the pointer moves: two candidates with one key are the same rule. */
  readonly key: string;
  readonly locus: Locus;
  readonly keeps: DraftRule;
  /** "depth 38.400 with Great wheel" */
  readonly says: string;
  /** How willingly it is taken: distances are divided by it. Depths come before all else. */
  readonly weight: number;
  /** Taken before all others when the pointer is well inside its reach: a place that was plainly meant. */
  readonly first?: boolean;
}

/** A place that settled, mm, with the rules that hold there. */
export interface Snap {
  readonly at: Point;
  readonly candidates: readonly SnapCandidate[];
}

/** A second rule is taken when both cross within this many times the reach. */
const CROSSING_REACH = 1.6;

/** A candidate that comes first is taken within this part of the reach. */
const FIRST_REACH = 0.7;

/**
 * @param target  where the pointer asks the place to be, mm
 * @param reach   how near a locus must be, mm (pixels over scale)
 * @param freedom how many rules the place can still take: 0, 1 or 2
 */
export function chooseSnap(
  candidates: readonly SnapCandidate[],
  target: Point,
  reach: number,
  freedom: number,
): Snap | undefined {
  if (freedom < 1) return undefined;
  const near = candidates
    .map((candidate) => ({ candidate, away: distanceToLocus(candidate.locus, target) / candidate.weight }))
    .filter(({ away, candidate }) => away <= reach && (freedom > 1 || candidate.locus.kind !== 'point'))
    .sort((a, b) => a.away - b.away || (a.candidate.key < b.candidate.key ? -1 : 1));
  const meant = near.find(({ away, candidate }) => candidate.first && away * candidate.weight <= reach * FIRST_REACH);
  const first = (meant ?? near[0])?.candidate;
  if (!first) return undefined;
  if (first.locus.kind === 'point') return { at: first.locus.at, candidates: [first] };
  if (freedom > 1) {
    for (const { candidate: second } of near.slice(1)) {
      const at = nearestTo(target, crossingsToStrike(first.locus, second.locus));
      if (at && Math.hypot(at.x - target.x, at.y - target.y) <= reach * CROSSING_REACH) {
        return { at, candidates: [first, second] };
      }
    }
  }
  return { at: nearestOnLocus(first.locus, target), candidates: [first] };
}

/** Sine of the flattest crossing of two lines that is taken, a thousandth: flatter ones are of no use on metal. */
const FLATTEST = 1e-3;

function crossingsToStrike(first: Locus, second: Locus): readonly Point[] {
  const crossings = crossingsOfLoci(first, second);
  if (!isStraight(first) || !isStraight(second)) return crossings;
  return crossings.filter((at) => Math.sin(crossingAngle(first, second, at)) >= FLATTEST);
}

const isStraight = (locus: Locus): locus is Extract<Locus, { kind: 'line' | 'ray' }> =>
  locus.kind === 'line' || locus.kind === 'ray';

function nearestTo(target: Point, points: readonly Point[]): Point | undefined {
  let best: Point | undefined;
  for (const point of points) {
    const away = Math.hypot(point.x - target.x, point.y - target.y);
    if (!best || away < Math.hypot(best.x - target.x, best.y - target.y)) best = point;
  }
  return best;
}
