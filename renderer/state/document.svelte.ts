/** The document: the movement with its history, whether it is saved, and where it is kept. */
import type { RecentFile } from '../../electron/bridge.ts';
import type { PartId } from '../../solver/movement/ids.ts';
import {
  commit,
  type Edit,
  emptyMovement,
  type History,
  type Refused,
  redo,
  type Step,
  startHistory,
  type Transaction,
  undo,
} from '../../solver/movement/index.ts';
import type { Movement } from '../../solver/movement/schema.ts';
import type { Session } from './session.ts';

/** One change as the history keeps it. */
export interface DocumentChange {
  /** What was done, as the undo button tells it: "move Second arbor". */
  readonly says: string;
  readonly edits: readonly Edit[];
  /** Changes of one group that follow each other quickly are one step. */
  readonly group?: string | undefined;
  readonly before: readonly PartId[];
  readonly after: readonly PartId[];
}

/** Holds the history; every change of the movement goes through it. */
export class DocumentState {
  private history = $state.raw<History>(startHistory(emptyMovement()));
  /** The transaction after which the document was saved; `undefined` for the document as it was opened. */
  private savedAfter = $state.raw<Transaction | 'never' | undefined>(undefined);
  private keptAs = $state('');
  private taken = $state(0);
  private files = $state.raw<readonly RecentFile[]>([]);
  private shell = $state.raw<Session | undefined>(undefined);

  readonly movement: Movement = $derived(this.history.movement);
  readonly unsaved: boolean = $derived(this.savedAfter !== this.history.done.at(-1));
  readonly undoSays: string | undefined = $derived(this.history.done.at(-1)?.label);
  readonly redoSays: string | undefined = $derived(this.history.undone.at(-1)?.label);

  /** The handle that the shell knows the document by; empty before the first one. */
  get handle(): string {
    return this.keptAs;
  }

  /** How many documents the window has taken over: what belongs to one is kept with its number, whatever its file is called. */
  get opened(): number {
    return this.taken;
  }

  /** Files opened before, as the shell keeps them. */
  get recent(): readonly RecentFile[] {
    return this.files;
  }

  /** What the commands ask of the shell; there from the first moment that the window can show a movement. */
  get session(): Session | undefined {
    return this.shell;
  }

  /** Another movement, its history empty. */
  adopt(movement: Movement, { handle, unsaved }: { handle: string; unsaved: boolean }): void {
    this.history = startHistory(movement);
    this.savedAfter = unsaved ? 'never' : undefined;
    this.keptAs = handle;
    this.taken++;
  }

  /** Makes one change at a time (ms); what refused it, or nothing. */
  change({ says, edits, group, before, after }: DocumentChange, timeMs: number): Refused | undefined {
    const outcome = commit(this.history, {
      label: says,
      edit: { kind: 'several', edits },
      timeMs,
      selectionBefore: before,
      selectionAfter: after,
      ...(group === undefined ? {} : { group }),
    });
    if (outcome.kind === 'refused') return outcome;
    this.history = outcome.history;
    return undefined;
  }

  undo(): Step | undefined {
    return this.take(undo(this.history));
  }

  redo(): Step | undefined {
    return this.take(redo(this.history));
  }

  private take(step: Step | undefined): Step | undefined {
    if (step) this.history = step.history;
    return step;
  }

  /** The document as it is now stands in its file. */
  wasSaved(handle: string): void {
    this.keptAs = handle;
    this.savedAfter = this.history.done.at(-1);
  }

  openedBefore(files: readonly RecentFile[]): void {
    this.files = files;
  }

  join(session: Session): void {
    this.shell = session;
  }
}
