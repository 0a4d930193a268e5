/** The maker's own measuring tools: kept on this computer, for they stand in his workshop and not in the movement. */
import { keepHere, keptHere } from '../shell/keptHere.ts';
import { readTools, type Tools } from './readTools.ts';

/** The tools as they stand, kept at every change. */
class OwnTools {
  kept = $state.raw<Tools>(readTools(keptHere('tools') ?? null));

  set(change: Partial<Tools>): void {
    this.kept = { ...this.kept, ...change };
    keepHere('tools', this.kept);
  }
}

export const ownTools = new OwnTools();
