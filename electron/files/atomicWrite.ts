/** Writing a file whole or not at all. */
import { setTimeout as pause } from 'node:timers/promises';
import writeFileAtomic from 'write-file-atomic';
import { codeOf } from './fileTrouble.ts';

/** Codes by which a system says that another program (a virus scanner, an indexer) holds the file just now. */
const HELD = new Set(['EBUSY', 'EPERM', 'EACCES']);
/** Waits between tries, ms: half a second in all, longer than scanners usually hold a small file (habit). */
const WAITS = [20, 60, 140, 280] as const;

/**
 * Writes beside the target, flushes, renames; keeps mode and owner, follows links. On any failure the old file stands
 * and nothing is left beside it. A rename held by another program is tried again for half a second.
 *
 * @param path a resolved path
 * @throws the first error of the file calls
 */
export async function atomicWrite(path: string, content: string | Uint8Array): Promise<void> {
  const data = typeof content === 'string' ? content : Buffer.from(content);
  let first: unknown;
  for (const wait of [...WAITS, undefined]) {
    try {
      await writeFileAtomic(path, data, { fsync: true });
      return;
    } catch (error) {
      first ??= error;
      if (wait === undefined || !HELD.has(codeOf(error))) throw first;
      await pause(wait);
    }
  }
}
