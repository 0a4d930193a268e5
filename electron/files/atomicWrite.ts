/**
 * Writing a file whole or not at all.
 *
 * A system may write less than it was given and say so only by the count. So every byte is counted, flushed and read
 * back before the rename; a file that does not read back as it was meant never takes the old one's place.
 */
import { createHash } from 'node:crypto';
import fs from 'node:fs';
import { join } from 'node:path';
import { setTimeout as pause } from 'node:timers/promises';
import { codeOf } from './fileTrouble.ts';

/** Codes by which a system says that another program (a virus scanner, an indexer) holds the file just now. */
const HELD = new Set(['EBUSY', 'EPERM', 'EACCES']);
/** Waits between tries, ms: half a second in all, longer than scanners usually hold a small file (habit). */
const WAITS = [20, 60, 140, 280] as const;
/** Codes by which a system says that it knows no owners, or lets only root change them. */
const NO_OWNERS = new Set(['ENOSYS', 'EINVAL', 'EPERM']);
/** Bytes read back at a time. */
const READ_BACK = 1 << 16;
/** Ending of a piece that is being written; what ends so was left by a run that was killed. */
export const PIECE = '.piece';
/** Names of pieces: of which file, by which process. */
const PIECE_NAME = /^(?<file>.+)\.(?<process>\d+)-\d+\.piece$/;

/** How the callback calls answer; those that give nothing leave the result out. */
type Done<T> = (error: NodeJS.ErrnoException | null, result?: T) => void;

/** One call of the file system as a promise. The calls are looked up when made, so that tests can make them fail. */
function call<T = void>(ask: (done: Done<T>) => void): Promise<T> {
  return new Promise((resolve, reject) => {
    // A call that gives a result gives it whenever it gives no error.
    ask((error, result) => (error ? reject(error) : resolve(result as T)));
  });
}

/** A write that ended short of its bytes, in the system's own manner. */
function shortWrite(path: string, written: number, wanted: number): NodeJS.ErrnoException {
  const says = `only ${written} of ${wanted} bytes were written to ${path}`;
  return Object.assign(new Error(says), { code: 'ENOSPC' });
}

/** Writes all bytes, however few the system takes at a time. A call that takes none ends it. */
async function writeAll(fd: number, data: Uint8Array, path: string): Promise<void> {
  let written = 0;
  while (written < data.length) {
    const from = written;
    const count = await call<number>((done) => fs.write(fd, data, from, data.length - from, from, done));
    if (count <= 0) throw shortWrite(path, written, data.length);
    written += count;
  }
}

/** Digest of what an open file holds. */
async function digestOfOpen(fd: number): Promise<string> {
  const hash = createHash('sha256');
  const part = new Uint8Array(READ_BACK);
  let at = 0;
  for (;;) {
    const from = at;
    const count = await call<number>((done) => fs.read(fd, part, 0, part.length, from, done));
    if (count === 0) return hash.digest('hex');
    hash.update(part.subarray(0, count));
    at += count;
  }
}

/** Compares size and digest of an open file with what it should hold. */
async function proveWhole(fd: number, data: Uint8Array, path: string): Promise<void> {
  const { size } = await call<fs.Stats>((done) => fs.fstat(fd, done));
  if (size !== data.length) throw shortWrite(path, size, data.length);
  if ((await digestOfOpen(fd)) === createHash('sha256').update(data).digest('hex')) return;
  throw Object.assign(new Error(`${path} does not read back as it was written`), { code: 'EIO' });
}

/** What a write may be told beside path and bytes. */
export interface WriteChoice {
  /** Mode of the new file; unstated that of the file that is replaced. */
  readonly mode?: number;
  /** Called when all is written and proved, with nothing between it and the rename; what it throws stops the write. */
  readonly beforeRename?: () => void;
}

/** Carries mode and owner of the file that is replaced over to the one that takes its place. */
async function carryOver(fd: number, old: fs.Stats, mode: number): Promise<void> {
  try {
    await call((done) => fs.fchown(fd, old.uid, old.gid, done));
  } catch (error) {
    // Whoever is not root may only keep his own files' owner; his copy then belongs to him.
    if (!NO_OWNERS.has(codeOf(error))) throw error;
  }
  await call((done) => fs.fchmod(fd, mode & 0o7777, done));
}

/** What the path leads to now, or undefined where nothing is there. */
async function statOf(path: string): Promise<fs.Stats | undefined> {
  try {
    return await call<fs.Stats>((done) => fs.stat(path, done));
  } catch (error) {
    if (codeOf(error) === 'ENOENT') return undefined;
    throw error;
  }
}

/** Fills and proves a piece beside the target; it is closed on every way out. */
async function writePiece(
  piece: string,
  data: Uint8Array,
  old: fs.Stats | undefined,
  choice: WriteChoice,
): Promise<void> {
  const mode = choice.mode ?? old?.mode;
  const fd = await call<number>((done) => fs.open(piece, 'wx+', mode === undefined ? 0o666 : mode & 0o7777, done));
  let isOpen = true;
  try {
    await writeAll(fd, data, piece);
    if (old) await carryOver(fd, old, mode ?? old.mode);
    await call((done) => fs.fsync(fd, done));
    await proveWhole(fd, data, piece);
    isOpen = false;
    await call((done) => fs.close(fd, done));
  } finally {
    // Only the first error is of use to the maker; closing again cannot add to it.
    if (isOpen) await call((done) => fs.close(fd, () => done(null)));
  }
}

/** The last look and the rename, one call after the other. */
function renameAfter(piece: string, target: string, { beforeRename }: WriteChoice): Promise<void> {
  return call((done) => {
    beforeRename?.();
    fs.rename(piece, target, done);
  });
}

let pieces = 0;

async function replaceWhole(path: string, data: Uint8Array, choice: WriteChoice): Promise<void> {
  const target = await call<string>((done) => fs.realpath(path, done)).catch((error: unknown) => {
    if (codeOf(error) === 'ENOENT') return path;
    throw error;
  });
  pieces++;
  const piece = `${target}.${process.pid}-${pieces}${PIECE}`;
  try {
    await writePiece(piece, data, await statOf(target), choice);
    await renameAfter(piece, target, choice);
  } catch (error) {
    await call((done) => fs.unlink(piece, () => done(null)));
    throw error;
  }
}

/**
 * Writes beside the target, counts, flushes, reads back, renames; keeps mode and owner, follows links. On any failure
 * the old file stands and nothing is left beside it. A rename held by another program is tried again for half a second.
 *
 * @param path a resolved path
 * @throws what `beforeRename` throws; the first error of the file calls; a file cut off by the system is `ENOSPC`, one that reads back wrong `EIO`
 */
export async function atomicWrite(path: string, content: string | Uint8Array, choice: WriteChoice = {}): Promise<void> {
  const data = typeof content === 'string' ? Buffer.from(content, 'utf8') : content;
  let first: unknown;
  for (const wait of [...WAITS, undefined]) {
    try {
      await replaceWhole(path, data, choice);
      return;
    } catch (error) {
      first ??= error;
      if (wait === undefined || !HELD.has(codeOf(error))) throw first;
      await pause(wait);
    }
  }
}

/** Whether a process of this number runs; one that belongs to somebody else does. */
function isRunning(id: number): boolean {
  try {
    process.kill(id, 0);
    return true;
  } catch (error) {
    return codeOf(error) !== 'ESRCH';
  }
}

/**
 * Takes away pieces that killed runs left in a folder; those of runs that are alive stay. Trouble with the folder is
 * left to whoever reads or writes there.
 *
 * @param ofFiles only pieces of these files, by bare name; unstated all
 */
export async function sweepPieces(folder: string, ofFiles?: (name: string) => boolean): Promise<void> {
  const names = await call<string[]>((done) => fs.readdir(folder, done)).catch(() => []);
  for (const name of names) {
    const { file, process: id } = PIECE_NAME.exec(name)?.groups ?? {};
    if (file === undefined || isRunning(Number(id)) || ofFiles?.(file) === false) continue;
    await call((done) => fs.unlink(join(folder, name), () => done(null)));
  }
}
