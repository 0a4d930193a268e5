/** How the maker prints: kept on this computer, for it belongs to the printer and not to the movement. */
import type { SheetChoice } from './questions.ts';
import { readChoice } from './sheetChoice.ts';

const KEPT = 'depthwright.printing';

/** The maker's choice of paper and printer, as it stands. */
class Printing {
  choice = $state.raw<SheetChoice>(readChoice(keptText()));

  set(change: Partial<SheetChoice>): void {
    this.choice = { ...this.choice, ...change };
    try {
      localStorage.setItem(KEPT, JSON.stringify(this.choice));
    } catch {
      // A page without storage prints the same; it only forgets.
    }
  }
}

function keptText(): string | null {
  try {
    return localStorage.getItem(KEPT);
  } catch {
    return null;
  }
}

export const printing = new Printing();
