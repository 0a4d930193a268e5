/**
 * Dragging a loose point: the solver keeps all rules, the place follows the pointer, and near a rule that it could
 * keep it settles on it. Until the pointer is released nothing is in the movement.
 */
import type { PointId } from '../../solver/movement/ids.ts';
import type { PlacedMovement } from '../../solver/planting/placed.ts';
import type { Bench } from '../state/bench.svelte.ts';
import { toWorld } from '../state/view.ts';
import type { Gesture, Press } from './pointerHub.ts';
import { Settler, type Settling } from './settling.ts';

/** The settler of the point that was pressed last. */
let ready: { readonly before: PlacedMovement; readonly point: PointId; readonly settler: Settler } | undefined;

/** Plans the drag of a point that is pressed, so that its first step is as quick as the others. */
export function prepareDrag(bench: Bench, point: PointId): void {
  const before = bench.settled;
  const settler = new Settler(bench, before, point);
  settler.prepare(bench.view.scale);
  ready = { before, point, settler };
}

/** The gesture that drags one point. */
export function dragPoint(bench: Bench, point: PointId, start: Press): Gesture {
  const before = bench.settled;
  const from = before.places.get(point);
  const grabbed = toWorld(bench.view, start.pixel);
  // The place keeps its distance from the pointer, so that nothing jumps when it is picked up off its centre.
  const offset = from ? { x: from.x - grabbed.x, y: from.y - grabbed.y } : { x: 0, y: 0 };
  const settler = ready?.before === before && ready.point === point ? ready.settler : new Settler(bench, before, point);
  ready = undefined;
  let settling: Settling | undefined;
  let last: Press | undefined;
  let isOver = false;
  /** Have rules to settle on been looked for yet? */
  let hasAsked = false;
  const settle = (press: Press, asking: boolean): void => {
    const pointer = toWorld(bench.view, press.pixel);
    const target = { x: pointer.x + offset.x, y: pointer.y + offset.y };
    settling = settler.at(target, bench.view.scale, press.free || !asking);
    hasAsked ||= asking;
  };
  const askAgain = (): void => {
    if (isOver || hasAsked || !last) return;
    settle(last, true);
    if (settling) bench.preview = settling.preview;
  };
  return {
    move(press) {
      // The first step follows the pointer and no more; the work of choosing and of the first snap has frames of its own.
      const isFirst = last === undefined;
      last = press;
      settle(press, !isFirst);
      if (settling) bench.preview = settling.preview;
      if (!isFirst) return;
      afterFrame(() => {
        if (!isOver) bench.choose([point]);
        afterFrame(askAgain);
      });
    },
    finish() {
      if (last && !hasAsked) settle(last, true);
      isOver = true;
      bench.preview = undefined;
      bench.choose([point]);
      const edits = settling?.edits() ?? [];
      if (!settling || edits.length === 0) return;
      const name = bench.nameOf(point);
      const says = settling.kept.length > 0 ? `${name}: ${settling.kept.join(', ')}` : `move ${name}`;
      bench.change(says, edits, { chosen: [point] });
    },
    abandon() {
      isOver = true;
      bench.preview = undefined;
      bench.choose([point]);
    },
  };
}

/** Runs once the next frame has been painted. */
function afterFrame(run: () => void): void {
  requestAnimationFrame(() => setTimeout(run));
}
