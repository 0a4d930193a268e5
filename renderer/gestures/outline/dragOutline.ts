/**
 * Dragging a corner, a side, a rim or the whole of a plate, wall or opening. The outline follows the pointer; one that
 * would cross itself is drawn dashed and named, and letting go there leaves everything as it was.
 */

import { applyEdit, type Edit } from '../../../solver/movement/index.ts';
import { plantMovement } from '../../../solver/planting/index.ts';
import type { Bench } from '../../state/bench.svelte.ts';
import type { CasePart } from '../../state/derive/parts.ts';
import type { HandleRef } from '../../state/handleRef.ts';
import type { Guide } from '../../state/preview.ts';
import { type Point, toWorld } from '../../state/view.ts';
import { refusalSays } from '../../wording/refusalSays.ts';
import type { Gesture, Press } from '../pointerHub.ts';
import { SNAP_REACH_PX } from '../settling.ts';
import { roundStep } from '../snapCandidates.ts';
import { ringsOf } from './handles.ts';
import { type Manner, type Shaped, shapedBy } from './shapeFields.ts';

/** The gesture that drags one handle. */
export function dragOutline(bench: Bench, part: CasePart, ref: HandleRef, start: Press): Gesture {
  const grabbed = toWorld(bench.view, start.pixel);
  const places = placesBeside(bench, part, ref);
  let shaped: Shaped | undefined;
  let fault = '';
  return {
    move(press) {
      const at = toWorld(bench.view, press.pixel);
      const reach = SNAP_REACH_PX / bench.view.scale;
      const manner: Manner = press.free
        ? { step: 0, reach: 0, places: [], lengthSays: bench.lengthSays }
        : { step: roundStep(reach / 8), reach, places, lengthSays: bench.lengthSays };
      const next = shapedBy(part, ref, grabbed, { x: at.x - grabbed.x, y: at.y - grabbed.y }, manner);
      if (!next) return;
      shaped = next;
      const outcome = applyEdit(bench.movement, editOf(part, next));
      fault = outcome.kind === 'refused' ? refusalSays(outcome, bench.nameOf) : '';
      const placed = outcome.kind === 'edited' ? plantMovement(outcome.movement, bench.settled) : bench.settled;
      const guides = outcome.kind === 'edited' ? [] : wrongGuides(next);
      bench.preview = { placed, guides, says: fault || next.says };
    },
    finish() {
      bench.preview = undefined;
      if (!shaped) return;
      if (fault) bench.tell('refused', `${fault} The outline stays as it was.`);
      else bench.change(`${bench.nameOf(part.id)}: ${shaped.says.toLowerCase()}`, [editOf(part, shaped)]);
    },
    abandon() {
      bench.preview = undefined;
    },
  };
}

export const editOf = (part: CasePart, { set }: Shaped): Edit => ({ kind: 'change', id: part.id, set });

/** Arbors, posts and marks, and the corners of the part that do not move along. */
function placesBeside(bench: Bench, part: CasePart, ref: HandleRef): Point[] {
  if (ref.kind === 'whole') return [...bench.settled.places.values()];
  const corners = ringsOf(part).flatMap(([ring, outline]) =>
    outline.kind === 'path' ? outline.vertices.filter((_, i) => ring !== ref.ring || i !== ref.index) : [],
  );
  return [...bench.settled.places.values(), ...corners];
}

/** The outline that cannot be. */
function wrongGuides({ set }: Shaped): Guide[] {
  return Object.entries(set).map(([ring, outline]) => ({ kind: 'wrongOutline', key: `wrong ${ring}`, outline }));
}
