/** What a press means on the outline of the chosen plate, wall or opening: take hold of it, choose a corner, or add one. */

import { hitAt } from '../../bench/hitTest.ts';
import type { HandleRef } from '../../state/handleRef.ts';
import { toWorld } from '../../state/view.ts';
import type { Gesture, Press } from '../pointerHub.ts';
import type { GesturePort } from '../port.ts';
import { addCornerAt, chooseHandle, chosenCase, chosenHandle, focusHandle } from './chosenOutline.ts';
import { dragOutline } from './dragOutline.ts';
import { handleAt, handlesOf, lineAt } from './handles.ts';

/** The handle or side under the pointer, where a part of the case is chosen and nothing else lies nearer. */
export function outlineUnder(port: GesturePort, { pixel, kind }: Press): HandleRef | undefined {
  const part = chosenCase(port);
  if (!part || port.isRehearsing || port.settingDown) return undefined;
  const finger = kind === 'touch';
  const handle = handleAt(handlesOf(part, port.view), pixel, finger);
  if (handle) return { ring: handle.ring, kind: handle.kind, index: handle.index };
  const line = lineAt(part, port.view, pixel, finger);
  if (!line) return undefined;
  // The sign of an arbor that lies on the line is meant before the line.
  const hit = hitAt({ placed: port.placed, sizes: port.sizes, view: port.view, pixel, finger });
  return hit && hit.kind !== 'wheel' && hit.point ? undefined : line;
}

/** Takes hold of what is under the pointer; it is chosen from then on. */
export function grabOutline(port: GesturePort, start: Press): Gesture | undefined {
  const part = chosenCase(port);
  const ref = outlineUnder(port, start);
  if (!part || !ref) return undefined;
  chooseHandle(port, ref);
  focusHandle(ref);
  return dragOutline(port, part, ref, start);
}

/** Chooses what was tapped; a second tap on a side adds a corner there. False where nothing of the outline was meant. */
export function tapOutline(port: GesturePort, press: Press, times: number): boolean {
  const ref = outlineUnder(port, press);
  if (!ref) return false;
  if (times > 1 && ref.kind === 'side') {
    addCornerAt(port, ref, toWorld(port.view, press.pixel));
    requestAnimationFrame(() => focusHandle(chosenHandle(port)));
    return true;
  }
  chooseHandle(port, ref);
  focusHandle(ref);
  return true;
}
