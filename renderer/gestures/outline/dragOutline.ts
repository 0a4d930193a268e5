/**
 * Dragging a corner, a side, a rim or the whole of a plate, wall or opening. The outline follows the pointer; one that
 * would cross itself is drawn dashed and named, and letting go there leaves everything as it was.
 */

import type { Point } from '../../../solver/geometry/index.ts';
import { applyEdit, type Edit } from '../../../solver/movement/index.ts';
import { plantMovement } from '../../../solver/planting/index.ts';
import { refusalSays } from '../../../solver/words/index.ts';
import { roundStep } from '../../ruleKinds/roundStep.ts';
import type { CasePart } from '../../state/derive/parts.ts';
import type { HandleRef } from '../../state/handleRef.ts';
import type { Guide } from '../../state/preview.ts';
import { toWorld } from '../../state/view.ts';
import type { Gesture, Press } from '../pointerHub.ts';
import { dragging, type GesturePort } from '../port.ts';
import { SNAP_REACH_PX } from '../settling.ts';
import { ringsOf } from './handles.ts';
import { type Manner, type Shaped, shapedBy } from './shapeFields.ts';

/** The gesture that drags one handle. */
export function dragOutline(port: GesturePort, part: CasePart, ref: HandleRef, start: Press): Gesture {
  const grabbed = toWorld(port.view, start.pixel);
  const places = placesBeside(port, part, ref);
  let shaped: Shaped | undefined;
  let fault = '';
  return {
    move(press) {
      const at = toWorld(port.view, press.pixel);
      const reach = SNAP_REACH_PX / port.view.scale;
      const manner: Manner = press.free
        ? { step: 0, reach: 0, places: [], lengthSays: port.lengthSays }
        : { step: roundStep(reach / 8), reach, places, lengthSays: port.lengthSays };
      const next = shapedBy(part, ref, grabbed, { x: at.x - grabbed.x, y: at.y - grabbed.y }, manner);
      if (!next) return;
      shaped = next;
      const outcome = applyEdit(port.movement, outlineEditOf(part, next));
      fault = outcome.kind === 'refused' ? refusalSays(outcome, port.speaker) : '';
      const placed = outcome.kind === 'edited' ? plantMovement(outcome.movement, port.settled) : port.settled;
      const guides = outcome.kind === 'edited' ? [] : wrongGuides(next);
      port.begin(dragging({ placed, guides, says: fault || next.says }));
    },
    finish() {
      port.begin(undefined);
      if (!shaped) return;
      if (fault) port.tell('refused', `${fault} The outline stays as it was.`);
      else port.change(`${port.nameOf(part.id)}: ${shaped.says.toLowerCase()}`, [outlineEditOf(part, shaped)]);
    },
    abandon() {
      port.begin(undefined);
    },
  };
}

/** The edit that gives a part its new outlines. */
export const outlineEditOf = (part: CasePart, { set }: Shaped): Edit => ({ kind: 'change', id: part.id, set });

/** Arbors, posts and marks, and the corners of the part that do not move along. */
function placesBeside(port: GesturePort, part: CasePart, ref: HandleRef): Point[] {
  if (ref.kind === 'whole') return [...port.settled.places.values()];
  const corners = ringsOf(part).flatMap(([ring, outline]) =>
    outline.kind === 'path' ? outline.vertices.filter((_, i) => ring !== ref.ring || i !== ref.index) : [],
  );
  return [...port.settled.places.values(), ...corners];
}

/** The outline that cannot be. */
function wrongGuides({ set }: Shaped): Guide[] {
  return Object.entries(set).map(([ring, outline]) => ({ kind: 'wrongOutline', key: `wrong ${ring}`, outline }));
}
