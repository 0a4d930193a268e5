/**
 * What gestures read and do. They know no more of the window: whoever listens to pointers hands them a port, and a
 * test hands them one of its own. State is read at the moment of the event.
 */

import type { Point } from '../../solver/geometry/index.ts';
import type { PartId } from '../../solver/movement/ids.ts';
import type { Edit } from '../../solver/movement/index.ts';
import type { Movement } from '../../solver/movement/schema.ts';
import type { PlacedMovement } from '../../solver/planting/placed.ts';
import type { Speaker } from '../../solver/words/index.ts';
import type { Sizes } from '../state/derive/sizes.ts';
import type { HandleRef } from '../state/handleRef.ts';
import type { Preview } from '../state/preview.ts';
import type { SettingDown, UnderWay } from '../state/underWay.ts';
import type { View } from '../state/view.ts';

/** How parts and lengths are told. */
export interface Words {
  nameOf(id: string): string;
  lengthSays(mm: number): string;
}

/** The window as a gesture sees it. */
export interface GesturePort extends Words {
  /** Who speaks for the document. */
  readonly speaker: Speaker;
  readonly movement: Movement;
  /** The planting of the movement itself. */
  readonly settled: PlacedMovement;
  /** The places as they are drawn: a preview's while there is one. */
  readonly placed: PlacedMovement;
  readonly sizes: Sizes;
  readonly view: View;
  readonly chosen: readonly PartId[];
  /** The corner, side or rim that is chosen; it may be gone since. */
  readonly handle: { readonly part: PartId; readonly ref: HandleRef } | undefined;
  readonly isRehearsing: boolean;
  readonly settingDown: SettingDown | undefined;

  /** Tells what is under way; nothing ends it. */
  begin(gesture: UnderWay | undefined): void;
  /** One transaction; false where it was refused, which is told. */
  change(says: string, edits: readonly Edit[], after?: { chosen?: readonly PartId[]; group?: string }): boolean;
  choose(parts: readonly PartId[], adding?: boolean): void;
  hover(part: PartId | undefined): void;
  takeHandle(part: PartId, ref: HandleRef | undefined): void;
  /** Moves the sheet, CSS pixels. */
  pan(dx: number, dy: number): void;
  zoom(factor: number, at: Point): void;
  tell(kind: 'done' | 'refused', says: string): void;
  /** What was told last no longer helps. */
  untell(): void;
}

/** A drag as it is under way: nothing of it is in the movement yet. */
export const dragging = (preview: Preview): UnderWay => ({ kind: 'drag', preview });
