/** Moving a corner, a side, a rim or a whole outline by keys: the numeric twin of a short drag, rounded to nothing. */

import type { HandleRef } from '../../state/handleRef.ts';
import type { GesturePort } from '../port.ts';
import { chosenCase, chosenHandle } from './chosenOutline.ts';
import { outlineEditOf } from './dragOutline.ts';
import { keyOfHandle, outlineRingOf } from './handles.ts';
import { shapedBy } from './shapeFields.ts';

const WHOLE: HandleRef = { ring: 'outline', kind: 'whole', index: 0 };

/** Moves the chosen handle, or the whole part where none is, by (dx, dy) mm; presses that follow each other are one step. */
export function nudgeOutline(port: GesturePort, dx: number, dy: number): void {
  const part = chosenCase(port);
  if (!part) return;
  const ref = chosenHandle(port) ?? WHOLE;
  // A rim is held to the right of its centre, where its handle stands; there up and right both widen it.
  const outline = outlineRingOf(part, ref.ring);
  const [x, y] = outline?.kind === 'circle' ? outline.centre : [0, 0];
  const grabbed = { x: x + 1, y };
  const d = ref.kind === 'rim' ? { x: dx + dy, y: 0 } : { x: dx, y: dy };
  const shaped = shapedBy(part, ref, grabbed, d, { step: 0, reach: 0, places: [], lengthSays: port.lengthSays });
  if (!shaped) return;
  const says = `${port.nameOf(part.id)}: ${shaped.says.toLowerCase()}`;
  port.change(says, [outlineEditOf(part, shaped)], { group: `nudge ${part.id} ${keyOfHandle(ref)}` });
}
