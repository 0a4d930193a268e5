/** Which corner, side or rim of the chosen plate, wall or opening is chosen, and changes of its outline by numbers and keys. */

import type { Point } from '../../../solver/geometry/index.ts';
import type { Edit } from '../../../solver/movement/index.ts';
import type { Outline } from '../../../solver/movement/schema.ts';
import { type CasePart, casePartOf } from '../../state/derive/parts.ts';
import type { HandleRef, Ring } from '../../state/handleRef.ts';
import type { GesturePort } from '../port.ts';
import { keyOfHandle, outlineRingOf } from './handles.ts';
import { addCorner, outlineSideOf, removeCorner } from './reshape.ts';

/** The one plate, wall or opening that is chosen. */
export function chosenCase({ chosen, movement }: Pick<GesturePort, 'chosen' | 'movement'>): CasePart | undefined {
  return chosen.length === 1 ? casePartOf(movement, chosen[0]) : undefined;
}

/** What of it is chosen; nothing where undo took the corner away. */
export function chosenHandle(port: Pick<GesturePort, 'chosen' | 'movement' | 'handle'>): HandleRef | undefined {
  const part = chosenCase(port);
  const taken = port.handle;
  if (!part || taken?.part !== part.id) return undefined;
  const outline = outlineRingOf(part, taken.ref.ring);
  if (!outline || (taken.ref.kind !== 'whole' && (taken.ref.kind === 'rim') !== (outline.kind === 'circle'))) {
    return undefined;
  }
  return outline.kind === 'path' && taken.ref.index >= outline.vertices.length ? undefined : taken.ref;
}

/** Takes hold of a handle of the chosen part, or lets go. */
export function chooseHandle(port: GesturePort, ref: HandleRef | undefined): void {
  const part = chosenCase(port);
  if (part) port.takeHandle(part.id, ref);
}

/** Gives one outline of the chosen part another form; false where it was refused. */
export function reshape(port: GesturePort, ring: Ring, outline: Outline, says: string): boolean {
  const part = chosenCase(port);
  if (!part) return false;
  const edit: Edit = { kind: 'change', id: part.id, set: { [ring]: outline } };
  return port.change(`${port.nameOf(part.id)}: ${says}`, [edit]);
}

/** A corner more on a side, or after a corner; beside `at`, mm, or in the middle of the side. */
export function addCornerAt(port: GesturePort, ref: HandleRef | undefined, at?: Point): void {
  const part = chosenCase(port);
  const outline = part && ref && outlineRingOf(part, ref.ring);
  if (!ref || outline?.kind !== 'path') return;
  const next = addCorner(outline, ref.index, at ?? outlineSideOf(outline, ref.index).middle);
  const corner: HandleRef = { ...ref, kind: 'corner', index: ref.index + 1 };
  if (reshape(port, ref.ring, next, 'a corner more')) chooseHandle(port, corner);
}

/** Takes the chosen corner away; the one before it is chosen then. */
export function removeChosenCorner(port: GesturePort): void {
  const ref = chosenHandle(port);
  const part = chosenCase(port);
  const outline = part && ref && outlineRingOf(part, ref.ring);
  if (ref?.kind !== 'corner' || outline?.kind !== 'path') return;
  const says = `corner ${ref.index + 1} removed`;
  if (!reshape(port, ref.ring, removeCorner(outline, ref.index), says)) return;
  chooseHandle(port, { ...ref, index: Math.max(0, ref.index - 1) });
}

/** Gives the keys to a handle, or to the sheet, so that arrows, Delete and Tab go on from there. */
export function focusHandle(ref: HandleRef | undefined): void {
  const key = ref && keyOfHandle(ref);
  const wanted = key === undefined ? '[data-sheet]' : `[data-handle="${key}"]`;
  document.querySelector<HTMLElement>(wanted)?.focus({ preventScroll: true });
}
