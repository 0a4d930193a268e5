/** Dragging several chosen points by one of them; and the same by arrow keys. */
import type { PointId } from '../../solver/movement/ids.ts';
import { toWorld } from '../state/view.ts';
import type { Gesture, Press } from './pointerHub.ts';
import { dragging, type GesturePort } from './port.ts';
import { pointsOfChosen, SeveralDrag } from './severalDrag.ts';

const NOTHING: Gesture = { move: () => undefined, finish: () => undefined, abandon: () => undefined };

/** The gesture that drags all that is chosen. */
export function dragSeveral(port: GesturePort, points: readonly PointId[], start: Press): Gesture {
  const grabbed = toWorld(port.view, start.pixel);
  const drag = new SeveralDrag(port.settled, points);
  if (drag.loose.length === 0) {
    tellPlanted(port);
    return NOTHING;
  }
  const says = saysOf(drag);
  return {
    move(press) {
      const at = toWorld(port.view, press.pixel);
      const placed = drag.by(at.x - grabbed.x, at.y - grabbed.y);
      port.begin(dragging({ placed, guides: [], says }));
    },
    finish() {
      port.begin(undefined);
      const edits = drag.edits();
      if (edits.length > 0) port.change(`move ${drag.loose.length} together`, edits);
    },
    abandon() {
      port.begin(undefined);
    },
  };
}

/** Moves all loose ones of what is chosen by (dx, dy) mm; presses that follow each other are one step. */
export function nudgeSeveral(port: GesturePort, dx: number, dy: number): void {
  const points = pointsOfChosen(port.settled, port.chosen);
  const drag = new SeveralDrag(port.settled, points);
  if (drag.loose.length === 0) {
    tellPlanted(port);
    return;
  }
  drag.by(dx, dy);
  const edits = drag.edits();
  if (edits.length === 0) port.tell('refused', 'They cannot move that way: their rules hold them.');
  else port.change(`move ${drag.loose.length} together`, edits, { group: `nudge ${points.join(' ')}` });
}

function saysOf({ loose, staying }: SeveralDrag): string {
  const stay =
    staying === 0
      ? ''
      : `; ${staying} ${staying === 1 ? 'is' : 'are'} not loose and ${staying === 1 ? 'stays' : 'stay'}`;
  return `${loose.length} moved together${stay}`;
}

function tellPlanted(port: GesturePort): void {
  port.tell('refused', 'None of these is loose: their rules hold them. Leave a rule out to move one.');
}
