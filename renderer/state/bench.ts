/**
 * The state of the window in four parts, and what is done to several of them at once.
 *
 * `document` is the movement with its history; it changes only through `change` (one transaction, undone as one step).
 * `derived` follows from the others. `looking` is how it is looked at, `hand` which view is open and which gesture is
 * under way. A field is written by its own part alone; everyone else calls the part's methods.
 */
import type { PartId } from '../../solver/movement/ids.ts';
import type { Edit, Step } from '../../solver/movement/index.ts';
import type { Movement } from '../../solver/movement/schema.ts';
import { refusalSays, type Speaker } from '../../solver/words/index.ts';
import { chosenBounds } from './derive/chosenBounds.ts';
import { viewOfGap } from './derive/viewOfGap.ts';
import { boundsOfWork } from './derive/workBounds.ts';
import { DerivedState } from './derived.svelte.ts';
import { DocumentState } from './document.svelte.ts';
import { Hand } from './hand.svelte.ts';
import { Looking } from './looking.svelte.ts';
import type { ViewBounds } from './view.ts';

/** Document, looking, hand and what is derived, with the acts that touch several of them. */
export class Bench {
  readonly document = new DocumentState();
  readonly looking = new Looking();
  readonly hand = new Hand();
  readonly derived = new DerivedState(this.document, this.looking, this.hand);

  nameOf = this.derived.nameOf;
  lengthSays = this.derived.lengthSays;

  /** Who speaks for the document: its unit, decimals and names. */
  get speaker(): Speaker {
    return this.derived.speaker;
  }

  /** Takes over a document: another movement, its history empty. */
  adopt(movement: Movement, document: { handle: string; unsaved: boolean }): void {
    this.hand.abandon();
    this.hand.begin(undefined);
    this.hand.leaveView();
    this.looking.forget();
    this.document.adopt(movement, document);
    this.fit();
  }

  /**
   * Makes one change, undone as one step.
   *
   * @param says   what was done, as the undo button tells it: "move Second arbor"
   * @param group  changes of one group that follow each other quickly are one step: a row of arrow keys
   * @returns      whether it was made; a refusal is told in the strip and changes nothing
   */
  change(says: string, edits: readonly Edit[], after: { chosen?: readonly PartId[]; group?: string } = {}): boolean {
    const before = this.looking.chosen;
    const refused = this.document.change(
      { says, edits, group: after.group, before, after: after.chosen ?? before },
      Date.now(),
    );
    if (refused) {
      this.looking.tell('refused', refusalSays(refused, this.speaker));
      return false;
    }
    if (after.chosen) this.looking.choose(after.chosen);
    this.looking.untell();
    return true;
  }

  undo(): void {
    this.took(this.document.undo(), 'Undone');
  }

  redo(): void {
    this.took(this.document.redo(), 'Done again');
  }

  private took(step: Step | undefined, says: string): void {
    if (!step) return;
    this.hand.abandon();
    this.hand.forgetPreview();
    this.looking.choose(step.selection as readonly PartId[]); // selections are handed to the history as part ids only
    this.looking.tell('done', `${says}: ${step.transaction.label}`);
  }

  /** The document as it is now stands in its file. */
  wasSaved({ handle, name }: { handle: string; name: string }): void {
    this.document.wasSaved(handle);
    this.looking.tell('done', `Saved as ${name}.`);
  }

  /** Shows where a finding is: chooses its parts and brings the place into view. */
  showFinding(key: string): void {
    const { looking } = this;
    const finding = this.derived.findings.find((each) => each.key === key);
    if (!finding) return;
    looking.askFinding(key);
    looking.choose(finding.parts);
    if (!finding.at || looking.face !== 'bench') return;
    looking.see(viewOfGap(looking.view, finding.at));
  }

  /** Shows what is chosen, large, with some of its surroundings. */
  fitChosen(): void {
    const { emphasised, placed, sizes } = this.derived;
    const bounds = chosenBounds(emphasised, placed, sizes);
    if (bounds) this.fit(bounds);
  }

  fit(bounds: ViewBounds | undefined = boundsOfWork(this.derived.settled, this.derived.sizes)): void {
    this.looking.fit(
      bounds,
      this.document.movement.plates.some(({ outline }) => outline.kind === 'path'),
    );
  }
}
