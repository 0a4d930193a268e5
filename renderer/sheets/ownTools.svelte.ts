/** The maker's own measuring tools: kept on this computer, for they stand in his workshop and not in the movement. */
import { readTools, type Tools } from './readTools.ts';

const KEPT = 'depthwright.tools';

/** The tools as they stand, kept at every change. */
class OwnTools {
  kept = $state.raw<Tools>(readTools(keptText()));

  set(change: Partial<Tools>): void {
    this.kept = { ...this.kept, ...change };
    try {
      localStorage.setItem(KEPT, JSON.stringify(this.kept));
    } catch {
      // A page without storage works the same; it only forgets.
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

export const ownTools = new OwnTools();
