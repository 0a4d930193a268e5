/** How the maker prints: kept on this computer, for it belongs to the printer and not to the movement. */
import { keepHere, keptHere } from '../shell/keptHere.ts';
import type { SheetChoice } from './questions.ts';
import { readChoice } from './sheetChoice.ts';

/** The maker's choice of paper and printer, kept at every change. */
class Printing {
  choice = $state.raw<SheetChoice>(readChoice(keptHere('printing') ?? null));

  set(change: Partial<SheetChoice>): void {
    this.choice = { ...this.choice, ...change };
    keepHere('printing', this.choice);
  }
}

export const printing = new Printing();
