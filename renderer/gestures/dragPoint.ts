/**
 * Dragging a loose point: the solver keeps all rules, the place follows the pointer, and near a rule that it could
 * keep it settles on it. Until the pointer is released nothing is in the movement.
 */
import type { PointId } from '../../solver/movement/index.ts';
import { toWorld } from '../bench/view.ts';
import type { Bench } from '../state/bench.svelte.ts';
import type { Gesture, Press } from './pointerHub.ts';
import { Settler, type Settling } from './settling.ts';

/** The gesture that drags one point. */
export function dragPoint(bench: Bench, point: PointId, start: Press): Gesture {
  const before = bench.settled;
  const from = before.places.get(point);
  const grabbed = toWorld(bench.view, start.pixel);
  // The place keeps its distance from the pointer, so that nothing jumps when it is picked up off its centre.
  const offset = from ? { x: from.x - grabbed.x, y: from.y - grabbed.y } : { x: 0, y: 0 };
  const settler = new Settler(bench, before, point);
  let settling: Settling | undefined;
  return {
    move(press) {
      const pointer = toWorld(bench.view, press.pixel);
      settling = settler.at({ x: pointer.x + offset.x, y: pointer.y + offset.y }, bench.view.scale, press.free);
      bench.preview = settling.preview;
    },
    finish() {
      bench.preview = undefined;
      const edits = settling?.edits() ?? [];
      if (!settling || edits.length === 0) return;
      const name = bench.nameOf(point);
      const says = settling.kept.length > 0 ? `${name}: ${settling.kept.join(', ')}` : `move ${name}`;
      bench.change(says, edits, { chosen: [point] });
    },
    abandon() {
      bench.preview = undefined;
    },
  };
}
