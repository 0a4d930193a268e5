/**
 * Reading and saving a movement's file.
 *
 * What was read is remembered by a digest of its bytes, so "changed on disk since it was opened" is exact: no clock and
 * no size decides it. The version that a save replaces is kept beside it with `.previous` at its end.
 */
import { createHash } from 'node:crypto';
import { readFile, realpath, stat } from 'node:fs/promises';
import { atomicWrite } from './atomicWrite.ts';
import { codeOf, fileTrouble } from './fileTrouble.ts';
import { inPathQueue } from './pathQueue.ts';

/** Largest file that is read, bytes; the limit guards against opening a film by mistake. */
export const MAX_FILE_BYTES = 256 * 1024 * 1024;
/** Ending of the kept version. */
export const PREVIOUS = '.previous';

/** The text of a file with its digest, or why it could not be read. */
export type ReadOutcome =
  | { readonly kind: 'read'; readonly text: string; readonly digest: string }
  | { readonly kind: 'failed'; readonly says: string };

/** The digest of what now stands on the disk, or why the old file still does. */
export type SaveOutcome =
  | { readonly kind: 'saved'; readonly digest: string }
  | { readonly kind: 'changedOnDisk' }
  | { readonly kind: 'failed'; readonly says: string };

const digestOf = (bytes: Uint8Array): string => createHash('sha256').update(bytes).digest('hex');

/** Reads a movement's file as text (UTF-8; a byte order mark is left out). */
export async function readDocumentFile(path: string): Promise<ReadOutcome> {
  try {
    const { size } = await stat(path);
    if (size > MAX_FILE_BYTES) {
      const says = `${path} has ${size} bytes; a movement has at most ${MAX_FILE_BYTES}. Choose a movement's file.`;
      return { kind: 'failed', says };
    }
    const bytes = await readFile(path);
    return { kind: 'read', text: bytes.toString('utf8').replace(/^\uFEFF/, ''), digest: digestOf(bytes) };
  } catch (error) {
    return { kind: 'failed', says: fileTrouble('read', path, error) };
  }
}

/** The file's bytes, or undefined where there is no file. */
async function presentBytes(path: string): Promise<Buffer | undefined> {
  try {
    return await readFile(path);
  } catch (error) {
    if (codeOf(error) === 'ENOENT') return undefined;
    throw error;
  }
}

/** Where a path really leads; a path to nothing stays itself. */
async function resolved(path: string): Promise<string> {
  try {
    return await realpath(path);
  } catch (error) {
    if (codeOf(error) === 'ENOENT') return path;
    throw error;
  }
}

/**
 * Saves a movement's text: keeps the present version beside it, then replaces it whole.
 *
 * @param knownDigest what the file held when it was read or last saved; `undefined` saves over anything (the maker was
 *   asked). A file that vanished meanwhile is written anew: there is nothing to lose.
 */
export function saveDocumentFile(path: string, text: string, knownDigest?: string): Promise<SaveOutcome> {
  return inPathQueue(path, async () => {
    try {
      const target = await resolved(path);
      const bytes = Buffer.from(text, 'utf8');
      const digest = digestOf(bytes);
      const present = await presentBytes(target);
      if (present && knownDigest !== undefined && digestOf(present) !== knownDigest) return { kind: 'changedOnDisk' };
      if (present && digestOf(present) !== digest) await atomicWrite(target + PREVIOUS, present);
      await atomicWrite(target, bytes);
      return { kind: 'saved', digest };
    } catch (error) {
      return { kind: 'failed', says: fileTrouble('saved', path, error) };
    }
  });
}
