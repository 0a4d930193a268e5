/** Which corner, side or rim of the chosen plate, wall or opening is chosen, and changes of its outline by numbers. */

import type { PartId } from '../../solver/movement/ids.ts';
import type { Edit } from '../../solver/movement/index.ts';
import type { Outline } from '../../solver/movement/schema.ts';
import { keyOfHandle, ringOf } from '../gestures/outline/handles.ts';
import { addCorner, removeCorner, sideOf } from '../gestures/outline/reshape.ts';
import type { Bench } from './bench.svelte.ts';
import { type CasePart, casePartOf } from './derive/parts.ts';
import type { HandleRef, Ring } from './handleRef.ts';

export class OutlineWork {
  private readonly bench: Bench;
  private taken = $state.raw<{ readonly part: PartId; readonly ref: HandleRef } | undefined>(undefined);

  constructor(bench: Bench) {
    this.bench = bench;
  }

  /** The one plate, wall or opening that is chosen. */
  get part(): CasePart | undefined {
    const { chosen, movement } = this.bench;
    return chosen.length === 1 ? casePartOf(movement, chosen[0]) : undefined;
  }

  /** What of it is chosen; nothing where undo took the corner away. */
  get handle(): HandleRef | undefined {
    const { part, taken } = this;
    if (!part || taken?.part !== part.id) return undefined;
    const outline = ringOf(part, taken.ref.ring);
    if (!outline || (taken.ref.kind !== 'whole' && (taken.ref.kind === 'rim') !== (outline.kind === 'circle'))) {
      return undefined;
    }
    return outline.kind === 'path' && taken.ref.index >= outline.vertices.length ? undefined : taken.ref;
  }

  choose(ref: HandleRef | undefined): void {
    const { part } = this;
    this.taken = ref && part ? { part: part.id, ref } : undefined;
  }

  /** Gives one outline of the chosen part another form; false where it was refused. */
  reshape(ring: Ring, outline: Outline, says: string, group?: string): boolean {
    const { bench, part } = this;
    if (!part) return false;
    const edit: Edit = { kind: 'change', id: part.id, set: { [ring]: outline } };
    return bench.change(`${bench.nameOf(part.id)}: ${says}`, [edit], group === undefined ? {} : { group });
  }

  /** A corner more on the chosen side, or after the chosen corner; `at` where it was pointed. */
  addCorner(ref: HandleRef | undefined = this.handle, at?: { readonly x: number; readonly y: number }): void {
    const outline = this.part && ref && ringOf(this.part, ref.ring);
    if (!ref || outline?.kind !== 'path') return;
    const next = addCorner(outline, ref.index, at ?? sideOf(outline, ref.index).middle);
    if (this.reshape(ref.ring, next, 'a corner more')) this.choose({ ...ref, kind: 'corner', index: ref.index + 1 });
  }

  removeCorner(): void {
    const ref = this.handle;
    const outline = this.part && ref && ringOf(this.part, ref.ring);
    if (ref?.kind !== 'corner' || outline?.kind !== 'path') return;
    if (!this.reshape(ref.ring, removeCorner(outline, ref.index), `corner ${ref.index + 1} removed`)) return;
    this.choose({ ...ref, index: Math.max(0, ref.index - 1) });
  }
}

/** Gives the keys to a handle, or to the sheet, so that arrows, Delete and Tab go on from there. */
export function focusHandle(ref: HandleRef | undefined): void {
  const key = ref && keyOfHandle(ref);
  const wanted = key === undefined ? '[data-sheet]' : `[data-handle="${key}"]`;
  document.querySelector<HTMLElement>(wanted)?.focus({ preventScroll: true });
}
