/**
 * Reading and saving a movement's file.
 *
 * What was read is remembered by a digest of its bytes, so "changed on disk since it was opened" is exact: no clock and
 * no size decides it. The version that a save replaces is kept beside it with `.previous` at its end.
 */
import { createHash } from 'node:crypto';
import { constants, readFileSync } from 'node:fs';
import { access, lstat, readFile, readlink, realpath, stat } from 'node:fs/promises';
import { type OldEncoding, textOfBytes } from '../../solver/movement/index.ts';
import { atomicWrite } from './atomicWrite.ts';
import { codeOf, fileTrouble } from './fileTrouble.ts';
import { inPathQueue } from './pathQueue.ts';
import { previousPathOf } from './previousVersion.ts';

/** Largest file that is read, bytes: four times a movement of 20,000 arbors. */
export const MAX_FILE_BYTES = 20_000_000;

/** The text of a file with its digest; that its encoding has to be asked; or why it could not be read. */
export type ReadOutcome =
  | { readonly kind: 'read'; readonly text: string; readonly digest: string }
  | { readonly kind: 'unknownEncoding'; readonly bytes: Uint8Array; readonly says: string }
  | { readonly kind: 'failed'; readonly says: string };

/** What may stand in the way of a save; each is asked about, and the maker's yes is handed to the next try. */
export type Hindrance = 'changedOnDisk' | 'readOnly' | 'linkToNothing';

/** The digest of what now stands on the disk, what has to be asked first, or why the old file still stands. */
export type SaveOutcome =
  | { readonly kind: 'saved'; readonly digest: string }
  | { readonly kind: 'changedOnDisk' | 'readOnly' }
  /** `to` is the path that the link names. */
  | { readonly kind: 'linkToNothing'; readonly to: string }
  | { readonly kind: 'failed'; readonly says: string };

/** Thrown by the last look before the rename. */
class ChangedMeanwhile extends Error {}

const digestOf = (bytes: Uint8Array): string => createHash('sha256').update(bytes).digest('hex');

/**
 * Reads a movement's file as text: UTF-8 or UTF-16, marks left out.
 *
 * @param encoding what the maker says that an older file is in
 */
export async function readDocumentFile(path: string, encoding?: OldEncoding): Promise<ReadOutcome> {
  try {
    const { size } = await stat(path);
    if (size > MAX_FILE_BYTES) {
      const says = `${path} has ${size} bytes; a movement has at most ${MAX_FILE_BYTES}. Choose a movement's file.`;
      return { kind: 'failed', says };
    }
    const bytes = await readFile(path);
    const decoded = textOfBytes(bytes, encoding);
    if (decoded.kind === 'text') return { kind: 'read', text: decoded.text, digest: digestOf(bytes) };
    if (decoded.kind === 'noText') {
      return { kind: 'failed', says: `${path} holds no text. Choose a movement's file.` };
    }
    const says = `${path} is no text in UTF-8 or UTF-16, so its letters cannot be told. Save it as UTF-8 where it was made.`;
    return { kind: 'unknownEncoding', bytes, says };
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

/** Where a path really leads; `dangling` where it is a link to what is not there. */
async function resolved(path: string): Promise<{ readonly target: string; readonly dangling?: string }> {
  try {
    return { target: await realpath(path) };
  } catch (error) {
    if (codeOf(error) !== 'ENOENT') throw error;
    const link = await lstat(path).catch(() => undefined);
    return link?.isSymbolicLink() ? { target: path, dangling: await readlink(path) } : { target: path };
  }
}

/** Whether a file is marked as not to be written, or may not be by whoever asks. */
async function isReadOnly(path: string): Promise<boolean> {
  try {
    // Root may write anything: the marks of the file are asked as well.
    if (((await stat(path)).mode & 0o222) === 0) return true;
    await access(path, constants.W_OK);
    return false;
  } catch (error) {
    return ['EACCES', 'EPERM'].includes(codeOf(error));
  }
}

/** The last look before a rename: throws where the file is not what it was. */
function stillAs(path: string, known: string | undefined): void {
  let now: string | undefined;
  try {
    now = digestOf(readFileSync(path));
  } catch (error) {
    // A file that vanished meanwhile is written anew: there is nothing to lose.
    if (codeOf(error) === 'ENOENT') return;
    throw error;
  }
  if (now !== known) throw new ChangedMeanwhile();
}

/**
 * Saves a movement's text: keeps the present version beside it, then replaces it whole.
 *
 * @param knownDigest what the file held when it was read or last saved; `undefined` saves over anything (the maker was
 *   asked). A file that vanished meanwhile is written anew: there is nothing to lose.
 * @param allowed what the maker was asked about and said yes to
 */
export function saveDocumentFile(
  path: string,
  text: string,
  knownDigest?: string,
  allowed: ReadonlySet<Hindrance> = new Set(),
): Promise<SaveOutcome> {
  return inPathQueue(path, async () => {
    try {
      return await save(path, Buffer.from(text, 'utf8'), knownDigest, allowed);
    } catch (error) {
      if (error instanceof ChangedMeanwhile) return { kind: 'changedOnDisk' };
      return { kind: 'failed', says: fileTrouble('saved', path, error) };
    }
  });
}

async function save(
  path: string,
  bytes: Buffer,
  knownDigest: string | undefined,
  allowed: ReadonlySet<Hindrance>,
): Promise<SaveOutcome> {
  const { target, dangling } = await resolved(path);
  if (dangling !== undefined && !allowed.has('linkToNothing')) return { kind: 'linkToNothing', to: dangling };
  const present = await presentBytes(target);
  const digest = digestOf(bytes);
  const before = present && digestOf(present);
  if (present) {
    if (knownDigest !== undefined && before !== knownDigest) return { kind: 'changedOnDisk' };
    if (!allowed.has('readOnly') && (await isReadOnly(target))) return { kind: 'readOnly' };
    const { mode } = await stat(target);
    if (before !== digest) await atomicWrite(await previousPathOf(target), present, { mode });
  }
  await atomicWrite(target, bytes, { beforeRename: () => stillAs(target, before) });
  return { kind: 'saved', digest };
}
