/**
 * What is typed into one field until it is kept: Enter and leaving keep it, Esc brings the old value back, undo takes
 * back what was typed. Number and word fields have the same manners; the components only draw.
 */

/** What a field asks of whoever uses it. */
export interface EditedField {
  /** The value that holds, as the field shows it. */
  shown(): string;
  /** Takes what was typed; what is wrong with it, or nothing. */
  keep(text: string, leaving: boolean): string | undefined;
  /** For a field that may be left open: it was emptied. */
  clear?: (() => void) | undefined;
}

/** Text of a field that is being edited. */
export class Editing {
  /** What was typed and is not kept yet; undefined while the field shows what holds. */
  typed = $state<string | undefined>(undefined);
  problem = $state('');
  private past: (string | undefined)[] = [];
  private future: (string | undefined)[] = [];

  constructor(private readonly edited: EditedField) {}

  /** What stands in the field. */
  get text(): string {
    return this.typed ?? this.edited.shown();
  }

  /** The field was entered: what it holds is marked, so that typing replaces it. */
  began = (event: Event & { currentTarget: HTMLInputElement }): void => {
    this.past = [];
    this.future = [];
    this.problem = '';
    event.currentTarget.select();
  };

  entered = (event: Event & { currentTarget: HTMLInputElement }): void => {
    this.past.push(this.typed);
    this.future = [];
    this.typed = event.currentTarget.value;
    this.problem = '';
  };

  left = (): void => this.finish(true);

  /** Enter keeps and leaves, Esc restores and leaves, undo and redo stay within the field while they can. */
  keyPressed = (event: KeyboardEvent): void => {
    const field = event.currentTarget instanceof HTMLElement ? event.currentTarget : undefined;
    const isUndo = (event.ctrlKey || event.metaKey) && !event.altKey && /^[zy]$/i.test(event.key);
    if (event.key === 'Enter') {
      this.finish(false);
      event.preventDefault();
      event.stopPropagation();
      if (this.problem === '') field?.blur();
    } else if (event.key === 'Escape') {
      this.restore();
      event.stopPropagation();
      field?.blur();
    } else if (isUndo && this.past.length + this.future.length > 0) {
      const isRedo = event.shiftKey || event.key.toLowerCase() === 'y';
      if (isRedo) this.step(this.future, this.past);
      else this.step(this.past, this.future);
      event.preventDefault();
      event.stopPropagation();
    }
  };

  private restore(): void {
    this.typed = undefined;
    this.problem = '';
  }

  private step(from: (string | undefined)[], to: (string | undefined)[]): void {
    if (from.length === 0) return;
    to.push(this.typed);
    this.typed = from.pop();
    this.problem = '';
  }

  private finish(leaving: boolean): void {
    const text = this.typed;
    const { clear } = this.edited;
    const shown = this.edited.shown();
    const isEmptied = text?.trim() === '';
    // Nothing typed, or emptied where something must stand: the value that holds stays, and is shown again.
    if (text === undefined || text === shown || (isEmptied && !clear && leaving)) {
      this.restore();
      return;
    }
    if (isEmptied && clear) {
      this.restore();
      clear();
      return;
    }
    this.problem = this.edited.keep(text, leaving) ?? '';
    // A field that was left shows what holds, and says why it is not what was typed.
    if (this.problem === '' || leaving) this.typed = undefined;
  }
}
