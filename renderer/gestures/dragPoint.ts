/**
 * Dragging a loose point: the solver keeps all rules, the place follows the pointer, and near a rule that it could
 * keep it settles on it. Until the pointer is released nothing is in the movement.
 */
import type { PointId } from '../../solver/movement/ids.ts';
import type { PlacedMovement } from '../../solver/planting/placed.ts';
import { toWorld } from '../state/view.ts';
import type { Gesture, Press } from './pointerHub.ts';
import { dragging, type GesturePort } from './port.ts';
import { Settler, type SettlingDrag } from './settling.ts';

/** The settler of the point that was pressed last. */
let ready: { readonly before: PlacedMovement; readonly point: PointId; readonly settler: Settler } | undefined;

/** Plans the drag of a point that is pressed, so that its first step is as quick as the others. */
export function prepareDrag(port: GesturePort, point: PointId): void {
  const before = port.settled;
  const settler = new Settler(port, before, point);
  settler.prepare(port.view.scale);
  ready = { before, point, settler };
}

/** The gesture that drags one point. */
export function dragPoint(port: GesturePort, point: PointId, start: Press): Gesture {
  const before = port.settled;
  const from = before.places.get(point);
  const grabbed = toWorld(port.view, start.pixel);
  // The place keeps its distance from the pointer, so that nothing jumps when it is picked up off its centre.
  const offset = from ? { x: from.x - grabbed.x, y: from.y - grabbed.y } : { x: 0, y: 0 };
  const settler = ready?.before === before && ready.point === point ? ready.settler : new Settler(port, before, point);
  ready = undefined;
  let settling: SettlingDrag | undefined;
  let last: Press | undefined;
  let isOver = false;
  /** Have rules to settle on been looked for yet? */
  let hasAsked = false;
  const settle = (press: Press, asking: boolean): void => {
    const pointer = toWorld(port.view, press.pixel);
    const target = { x: pointer.x + offset.x, y: pointer.y + offset.y };
    settling = settler.at(target, port.view.scale, press.free || !asking);
    hasAsked ||= asking;
  };
  const askAgain = (): void => {
    if (isOver || hasAsked || !last) return;
    settle(last, true);
    if (settling) port.begin(dragging(settling.preview));
  };
  return {
    move(press) {
      // The first step follows the pointer and no more; the work of choosing and of the first snap has frames of its own.
      const isFirst = last === undefined;
      last = press;
      settle(press, !isFirst);
      if (settling) port.begin(dragging(settling.preview));
      if (!isFirst) return;
      afterFrame(() => {
        if (!isOver) port.choose([point]);
        afterFrame(askAgain);
      });
    },
    finish() {
      if (last && !hasAsked) settle(last, true);
      isOver = true;
      port.begin(undefined);
      port.choose([point]);
      const edits = settling?.edits() ?? [];
      if (!settling || edits.length === 0) return;
      const name = port.nameOf(point);
      const says = settling.kept.length > 0 ? `${name}: ${settling.kept.join(', ')}` : `move ${name}`;
      port.change(says, edits, { chosen: [point] });
    },
    abandon() {
      isOver = true;
      port.begin(undefined);
      port.choose([point]);
    },
  };
}

/** Runs once the next frame has been painted. */
function afterFrame(run: () => void): void {
  requestAnimationFrame(() => setTimeout(run));
}
