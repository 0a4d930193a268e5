/** Where the version that a save replaces is kept, and never over a file that is not such a version. */
import { lstat, readFile } from 'node:fs/promises';
import { FORMAT } from '../../solver/movement/schema.ts';
import { codeOf } from './fileTrouble.ts';

/** Ending of the kept version. */
export const PREVIOUS = '.previous';
/** Names tried before giving up: each one taken by a file that is not ours. */
const MOST_TRIED = 20;

/** Whether a path is free, or holds what an earlier save kept there: a movement in a file of its own. */
async function mayHoldPrevious(path: string): Promise<boolean> {
  try {
    if (!(await lstat(path)).isFile()) return false;
    return (await readFile(path, 'utf8')).includes(`"${FORMAT}"`);
  } catch (error) {
    if (codeOf(error) === 'ENOENT') return true;
    throw error;
  }
}

/**
 * The path for the kept version of a file: `NAME.previous`, or `NAME.previous-2` and so on where a file of another kind
 * has that name.
 *
 * @throws Error with code `EEXIST` where twenty such names are taken
 */
export async function previousPathOf(path: string): Promise<string> {
  for (let count = 1; count <= MOST_TRIED; count++) {
    const candidate = `${path}${PREVIOUS}${count === 1 ? '' : `-${count}`}`;
    if (await mayHoldPrevious(candidate)) return candidate;
  }
  throw Object.assign(new Error(`no free name for the version before ${path}`), { code: 'EEXIST' });
}
