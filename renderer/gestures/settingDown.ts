/**
 * Setting something down: it follows the pointer as a preview, settles on rules like anything dragged, and is added
 * by a press or by the form's button. Esc puts it away without a trace.
 */

import type { Point } from '../../solver/geometry/index.ts';
import type { PartId } from '../../solver/movement/ids.ts';
import { applyEdit, type Edit } from '../../solver/movement/index.ts';
import type { Movement } from '../../solver/movement/schema.ts';
import { plantMovement } from '../../solver/planting/index.ts';
import type { PlacedMovement } from '../../solver/planting/placed.ts';
import { refusalSays } from '../../solver/words/index.ts';
import { hitAt } from '../bench/hitTest.ts';
import type { Preview } from '../state/preview.ts';
import type { DownKind, SetDownDraft, SettingDown } from '../state/underWay.ts';
import { toWorld } from '../state/view.ts';
import type { GesturePort } from './port.ts';
import { firstDraft, type SetDown, setDown } from './setDownDrafts.ts';
import { Settler } from './settling.ts';

/** The part in the hand, until it is set down or put away. */
export class SetDownGesture implements SettingDown {
  readonly kind: DownKind;
  private readonly port: GesturePort;
  private draft: SetDownDraft;
  /** Where it would stand, mm. */
  private at: Point;
  /** The arbor that it would go onto. */
  private on: string | undefined;
  private ready: (() => { readonly down: SetDown; readonly edits: readonly Edit[] }) | undefined;
  /** The draft as a part of a movement that nobody has yet, ready to be moved about. */
  private trial: Trial | undefined;

  constructor(port: GesturePort, kind: DownKind) {
    this.port = port;
    this.kind = kind;
    this.draft = firstDraft(kind, port.movement);
    this.at = port.view.centre;
    // Set down from the keyboard, a wheel or a pipe goes onto the arbor that is chosen.
    const on = port.movement.arbors.find(({ id }) => kind !== 'arbor' && port.chosen.includes(id))?.id;
    this.on = on;
    const place = on && port.placed.places.get(on);
    if (place) this.at = { x: place.x, y: place.y };
    this.tell(undefined);
  }

  aim(pixel: Point, free: boolean): void {
    const { settled, sizes, view } = this.port;
    const hit = hitAt({ placed: settled, sizes, view, pixel });
    const place = hit?.kind === 'arbor' && hit.point ? settled.places.get(hit.point) : undefined;
    const takesArbor = this.kind === 'wheel' || this.kind === 'pipe';
    this.on = takesArbor && place ? place.id : undefined;
    const at = takesArbor && place ? { x: place.x, y: place.y } : toWorld(view, pixel);
    this.show(at, free);
  }

  type(draft: SetDownDraft, at: Point = this.at): void {
    this.draft = draft;
    if (at !== this.at) this.on = undefined;
    this.show(at, true);
  }

  keep(): boolean {
    if (!this.ready) this.show(this.at, true);
    const ready = this.ready?.();
    if (!ready) return false;
    this.tell(undefined);
    const chosen = [ready.down.part as PartId]; // the id of the part that was just made
    if (!this.port.change(ready.down.says, ready.edits, { chosen })) return false;
    this.port.begin(undefined);
    return true;
  }

  putAway(): void {
    this.port.begin(undefined);
    // How to set down no longer helps.
    this.port.untell();
  }

  private tell(preview: Preview | undefined): void {
    const { draft, at } = this;
    this.port.begin({ kind: 'settingDown', down: this, draft, at, preview });
  }

  private show(at: Point, free: boolean): void {
    this.at = at;
    const trial = this.trialFor(at);
    if (!trial) {
      this.ready = undefined;
      this.tell(undefined);
      return;
    }
    const { down, placed, settler } = trial;
    if (!settler) {
      this.tell({ placed, guides: [], says: '' });
      this.ready = () => ({ down, edits: down.edits });
      return;
    }
    const settling = settler.at(at, this.port.view.scale, free || this.on !== undefined);
    this.tell(settling.preview);
    this.ready = () => ({ down, edits: [...down.edits, ...settling.edits()] });
  }

  /** The draft planted as if it were set down; the last one while only its place changed. */
  private trialFor(at: Point): Trial | undefined {
    const { draft, on, port } = this;
    const { movement } = port;
    const last = this.trial;
    if (last?.settler && last.draft === draft && last.on === on && last.movement === movement) return last;
    this.trial = undefined;
    const down = setDown(this.kind, draft, at, on, movement);
    const outcome = 'cannot' in down ? undefined : applyEdit(movement, { kind: 'several', edits: down.edits });
    if ('cannot' in down || outcome?.kind !== 'edited') {
      port.tell(
        'refused',
        'cannot' in down ? down.cannot : outcome?.kind === 'refused' ? refusalSays(outcome, port.speaker) : '',
      );
      return undefined;
    }
    const placed = plantMovement(outcome.movement, port.settled);
    const settler = down.point === undefined ? undefined : new Settler(port, placed, down.point);
    this.trial = { movement, draft, on, down, placed, settler };
    return this.trial;
  }
}

/** The movement with the part in it. */
interface Trial {
  readonly movement: Movement;
  readonly draft: SetDownDraft;
  readonly on: string | undefined;
  readonly down: SetDown;
  readonly placed: PlacedMovement;
  /** Moves it about; none for parts that have no place of their own to be settled. */
  readonly settler: Settler | undefined;
}
