/** Which of the two crossings of two loci is meant, in words. */

import { otherCrossingOfLoci, type Point, separation } from '../../geometry/index.ts';
import type { Locus, Metal } from './metal.ts';

/** Which of two crossings, by the greater difference as seen: upper, lower, right-hand or left-hand. */
export function sideOfTwo(at: Point, other: Point): 'upper' | 'lower' | 'right-hand' | 'left-hand' {
  const dx = at.x - other.x;
  const dy = at.y - other.y;
  if (Math.abs(dx) > Math.abs(dy)) return dx > 0 ? 'right-hand' : 'left-hand';
  return dy > 0 ? 'upper' : 'lower';
}

/** A landmark is only named where it is clearly nearer the right crossing than the wrong one. */
const CLEARLY_NEARER = 0.7;

/** Which crossing is meant, in words; undefined where there is only one. */
export function crossingWords(
  first: Locus,
  second: Locus,
  at: Point,
  metal: Metal,
  label: (id: string) => string,
): string | undefined {
  const other = otherCrossingOfLoci(first, second, at);
  if (!other) return undefined;
  const words = [`the ${sideOfTwo(at, other)} of the two crossings`];
  if (first.kind === 'circle' && second.kind === 'circle' && first.told.kind === 'arc' && second.told.kind === 'arc') {
    const turn =
      (second.centre.x - first.centre.x) * (at.y - first.centre.y) -
      (second.centre.y - first.centre.y) * (at.x - first.centre.x);
    const side = turn > 0 ? 'left' : 'right';
    words.push(`${side} of the line from ${label(first.told.from)} to ${label(second.told.from)}`);
  }
  const near = landmark(at, other, metal);
  if (near) words.push(`nearer ${label(near)}`);
  return words.join(', ');
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
