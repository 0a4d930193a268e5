/**
 * Setting something down: it follows the pointer as a preview, settles on rules like anything dragged, and is added
 * by a press or by the form's button. Esc puts it away without a trace.
 */

import type { PartId } from '../../solver/movement/ids.ts';
import { applyEdit, type Edit } from '../../solver/movement/index.ts';
import type { Movement } from '../../solver/movement/schema.ts';
import { plantMovement } from '../../solver/planting/index.ts';
import type { PlacedMovement } from '../../solver/planting/placed.ts';
import { hitAt } from '../bench/hitTest.ts';
import type { Bench } from '../state/bench.svelte.ts';
import { type Point, toWorld } from '../state/view.ts';
import { refusalSays } from '../wording/refusalSays.ts';
import { type DownKind, type Draft, firstDraft, type SetDown, setDown } from './setDownDrafts.ts';
import { Settler } from './settling.ts';

export class SettingDown {
  readonly kind: DownKind;
  draft = $state.raw<Draft>({});
  /** Where it would stand, mm. */
  at = $state.raw<Point>({ x: 0, y: 0 });
  /** The arbor that it would go onto. */
  private on: string | undefined;
  private ready: (() => { readonly down: SetDown; readonly edits: readonly Edit[] }) | undefined;
  /** The draft as a part of a movement that nobody has yet, ready to be moved about. */
  private trial: Trial | undefined;

  constructor(bench: Bench, kind: DownKind) {
    this.kind = kind;
    this.draft = firstDraft(kind, bench.movement);
    this.at = bench.view.centre;
    // Set down from the keyboard, a wheel or a pipe goes onto the arbor that is chosen.
    this.on = bench.movement.arbors.find(({ id }) => kind !== 'arbor' && bench.chosen.includes(id))?.id;
    const place = this.on ? bench.placed.places.get(bench.chosen[0] as never) : undefined; // looked up by the chosen arbor's id
    if (place) this.at = { x: place.x, y: place.y };
  }

  /** Follows the pointer. */
  aim(bench: Bench, pixel: Point, free: boolean): void {
    const hit = hitAt({ placed: bench.settled, sizes: bench.sizes, view: bench.view, pixel });
    const place = hit?.kind === 'arbor' && hit.point ? bench.settled.places.get(hit.point) : undefined;
    const takesArbor = this.kind === 'wheel' || this.kind === 'pipe';
    this.on = takesArbor && place ? place.id : undefined;
    const at = takesArbor && place ? { x: place.x, y: place.y } : toWorld(bench.view, pixel);
    this.show(bench, at, free);
  }

  /** Takes typed numbers: the draft's, or the place. */
  type(bench: Bench, draft: Draft, at: Point = this.at): void {
    this.draft = draft;
    if (at !== this.at) this.on = undefined;
    this.show(bench, at, true);
  }

  /** Adds it to the movement and chooses it. */
  keep(bench: Bench): boolean {
    if (!this.ready) this.show(bench, this.at, true);
    const ready = this.ready?.();
    if (!ready) return false;
    bench.preview = undefined;
    const chosen = [ready.down.part as PartId]; // the id of the part that was just made
    if (!bench.change(ready.down.says, ready.edits, { chosen })) return false;
    bench.settingDown = undefined;
    return true;
  }

  putAway(bench: Bench): void {
    bench.preview = undefined;
    bench.settingDown = undefined;
    // How to set down no longer helps.
    bench.told = undefined;
  }

  private show(bench: Bench, at: Point, free: boolean): void {
    this.at = at;
    const trial = this.trialFor(bench, at);
    if (!trial) {
      this.ready = undefined;
      bench.preview = undefined;
      return;
    }
    const { down, placed, settler } = trial;
    if (!settler) {
      bench.preview = { placed, guides: [], says: '' };
      this.ready = () => ({ down, edits: down.edits });
      return;
    }
    const settling = settler.at(at, bench.view.scale, free || this.on !== undefined);
    bench.preview = settling.preview;
    this.ready = () => ({ down, edits: [...down.edits, ...settling.edits()] });
  }

  /** The draft planted as if it were set down; the last one while only its place changed. */
  private trialFor(bench: Bench, at: Point): Trial | undefined {
    const { draft, on } = this;
    const last = this.trial;
    if (last?.settler && last.draft === draft && last.on === on && last.movement === bench.movement) return last;
    this.trial = undefined;
    const down = setDown(this.kind, draft, at, on, bench.movement);
    const outcome = 'cannot' in down ? undefined : applyEdit(bench.movement, { kind: 'several', edits: down.edits });
    if ('cannot' in down || outcome?.kind !== 'edited') {
      bench.tell(
        'refused',
        'cannot' in down ? down.cannot : outcome?.kind === 'refused' ? refusalSays(outcome, bench.nameOf) : '',
      );
      return undefined;
    }
    const placed = plantMovement(outcome.movement, bench.settled);
    const settler = down.point === undefined ? undefined : new Settler(bench, placed, down.point);
    this.trial = { movement: bench.movement, draft, on, down, placed, settler };
    return this.trial;
  }
}

interface Trial {
  readonly movement: Movement;
  readonly draft: Draft;
  readonly on: string | undefined;
  readonly down: SetDown;
  readonly placed: PlacedMovement;
  /** Moves it about; none for parts that have no place of their own to be settled. */
  readonly settler: Settler | undefined;
}
