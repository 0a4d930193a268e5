/** What would settle a planting: one loose point, and the kinds of rules that would take a motion from it. */
import type { PointId, RuleId } from '../../movement/ids.ts';
import { applyEdit } from '../../movement/index.ts';
import type { Place, PlacedMovement } from '../placed.ts';
import { plantMovement } from './plantMovement.ts';
import type { DraftRule } from './ruleKinds/kind.ts';
import { settlingRules } from './settlingRules.ts';

/** A loose point and what would settle it. */
export interface ToSettle {
  readonly point: PointId;
  /** Kinds of rules that take a motion from it, the likeliest first. */
  readonly kinds: readonly DraftRule['kind'][];
  /** Motions of its own that it has. */
  readonly freedoms: number;
  /** Rules that would take a motion from it and are told to check. */
  readonly told: readonly RuleId[];
}

/** The point to settle first; undefined where nothing is loose, or only several points together. */
export function toSettle(placed: PlacedMovement): ToSettle | undefined {
  const point = placed.freeMotions > 0 ? pointToSettle(placed.places.values()) : undefined;
  if (point === undefined) return undefined;
  const kinds = [...new Set(settlingRules(placed, point).map(({ rule }) => rule.kind))];
  return { point, kinds, freedoms: placed.places.get(point)?.free.length ?? 0, told: toldToCheck(placed) };
}

/** Rules told to check that are tried: each is planted once. */
const MOST_TRIED = 20;

/** Rules told to check of which each would take a motion away if it might place. */
function toldToCheck({ movement, freeMotions }: PlacedMovement): RuleId[] {
  const told = movement.rules.filter(({ duty, leaveOut }) => duty === 'checks' && !leaveOut).slice(0, MOST_TRIED);
  return told.flatMap(({ id }) => {
    const edited = applyEdit(movement, { kind: 'setDuty', rules: [id], duty: 'byOrder' });
    return edited.kind === 'edited' && plantMovement(edited.movement).freeMotions < freeMotions ? [id] : [];
  });
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
