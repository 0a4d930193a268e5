/** Which of the two crossings of two loci is meant. */

import { otherCrossingOfLoci, type Point, separation } from '../../geometry/index.ts';
import type { CrossingTold } from '../marks.ts';
import type { Metal, MetalLocus } from './metal.ts';

/** Which of two crossings, by the greater difference as seen: upper, lower, right-hand or left-hand. */
export function sideOfTwo(at: Point, other: Point): CrossingTold['side'] {
  const dx = at.x - other.x;
  const dy = at.y - other.y;
  if (Math.abs(dx) > Math.abs(dy)) return dx > 0 ? 'right-hand' : 'left-hand';
  return dy > 0 ? 'upper' : 'lower';
}

/** A landmark is only named where it is clearly nearer the right crossing than the wrong one. */
const CLEARLY_NEARER = 0.7;

/** Which crossing is meant; undefined where there is only one. */
export function crossingTold(first: MetalLocus, second: MetalLocus, at: Point, metal: Metal): CrossingTold | undefined {
  const other = otherCrossingOfLoci(first, second, at);
  if (!other) return undefined;
  const near = landmark(at, other, metal);
  const beside = besideCentres(first, second, at);
  return {
    side: sideOfTwo(at, other),
    ...(beside ? { beside } : {}),
    ...(near === undefined ? {} : { near }),
  };
}

/** The side of the line of centres on which the crossing of two arcs lies. */
function besideCentres(first: MetalLocus, second: MetalLocus, at: Point): CrossingTold['beside'] {
  if (first.kind !== 'circle' || second.kind !== 'circle') return undefined;
  if (first.told.kind !== 'arc' || second.told.kind !== 'arc') return undefined;
  const turn =
    (second.centre.x - first.centre.x) * (at.y - first.centre.y) -
    (second.centre.y - first.centre.y) * (at.x - first.centre.x);
  return { isLeft: turn > 0, from: first.told.from, to: second.told.from };
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
