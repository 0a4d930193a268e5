/** What a press means on the outline of the chosen plate, wall or opening: take hold of it, choose a corner, or add one. */

import { hitAt } from '../../bench/hitTest.ts';
import type { Bench } from '../../state/bench.svelte.ts';
import type { HandleRef } from '../../state/handleRef.ts';
import { focusHandle } from '../../state/outlineWork.svelte.ts';
import { toWorld } from '../../state/view.ts';
import type { Gesture, Press } from '../pointerHub.ts';
import { dragOutline } from './dragOutline.ts';
import { handleAt, handlesOf, lineAt } from './handles.ts';

/** The handle or side under the pointer, where a part of the case is chosen and nothing else lies nearer. */
export function outlineUnder(bench: Bench, { pixel, kind }: Press): HandleRef | undefined {
  const { part } = bench.outlines;
  if (!part || bench.rehearsing || bench.settingDown) return undefined;
  const finger = kind === 'touch';
  const handle = handleAt(handlesOf(part, bench.view), pixel, finger);
  if (handle) return { ring: handle.ring, kind: handle.kind, index: handle.index };
  const line = lineAt(part, bench.view, pixel, finger);
  if (!line) return undefined;
  // The sign of an arbor that lies on the line is meant before the line.
  const hit = hitAt({ placed: bench.placed, sizes: bench.sizes, view: bench.view, pixel, finger });
  return hit && hit.kind !== 'wheel' && hit.point ? undefined : line;
}

/** Takes hold of what is under the pointer; it is chosen from then on. */
export function grabOutline(bench: Bench, start: Press): Gesture | undefined {
  const { part } = bench.outlines;
  const ref = outlineUnder(bench, start);
  if (!part || !ref) return undefined;
  bench.outlines.choose(ref);
  focusHandle(ref);
  return dragOutline(bench, part, ref, start);
}

/** Chooses what was tapped; a second tap on a side adds a corner there. False where nothing of the outline was meant. */
export function tapOutline(bench: Bench, press: Press, times: number): boolean {
  const ref = outlineUnder(bench, press);
  if (!ref) return false;
  if (times > 1 && ref.kind === 'side') {
    bench.outlines.addCorner(ref, toWorld(bench.view, press.pixel));
    requestAnimationFrame(() => focusHandle(bench.outlines.handle));
    return true;
  }
  bench.outlines.choose(ref);
  focusHandle(ref);
  return true;
}
