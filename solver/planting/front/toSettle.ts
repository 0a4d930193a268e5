/** What would settle a planting: one loose point, and the kinds of rules that would take a motion from it. */
import type { PointId } from '../../movement/ids.ts';
import type { Place, PlacedMovement } from '../placed.ts';
import type { DraftRule } from './ruleValue.ts';
import { settlingRules } from './settlingRules.ts';

/** A loose point and what would settle it. */
export interface ToSettle {
  readonly point: PointId;
  /** Kinds of rules that take a motion from it, the likeliest first. */
  readonly kinds: readonly DraftRule['kind'][];
  /** Motions of its own that it has. */
  readonly freedoms: number;
}

/** The point to settle first; undefined where nothing is loose, or only several points together. */
export function toSettle(placed: PlacedMovement): ToSettle | undefined {
  const point = placed.freeMotions > 0 ? pointToSettle(placed.places.values()) : undefined;
  if (point === undefined) return undefined;
  const kinds = [...new Set(settlingRules(placed, point).map(({ rule }) => rule.kind))];
  return { point, kinds, freedoms: placed.places.get(point)?.free.length ?? 0 };
}

/** The one with the fewest freedoms of its own, the first in the movement. */
function pointToSettle(places: Iterable<Place>): PointId | undefined {
  let best: Place | undefined;
  let fewest = Number.POSITIVE_INFINITY;
  for (const place of places) {
    if (place.state !== 'loose') continue;
    const freedoms = place.free.length;
    if (freedoms > 0 && freedoms < fewest) {
      best = place;
      fewest = freedoms;
    }
  }
  return best?.id;
}
