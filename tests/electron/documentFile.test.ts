/** Reading and saving: whole or not at all, whichever file call fails. */
import { spawnSync } from 'node:child_process';
import fs from 'node:fs';
import { chmod, lstat, mkdtemp, readdir, readFile, rm, stat, symlink, unlink, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, test, vi } from 'vitest';
import { PIECE, sweepPieces } from '../../electron/files/atomicWrite.ts';
import { readDocumentFile, saveDocumentFile } from '../../electron/files/documentFile.ts';
import { writeIntoFolder } from '../../electron/files/exportFolder.ts';
import { PREVIOUS } from '../../electron/files/previousVersion.ts';
import { watchCalls } from './failingCalls.ts';

let folder: string;
let file: string;
beforeEach(async () => {
  folder = await mkdtemp(join(tmpdir(), 'depthwright-files-'));
  file = join(folder, 'movement.depthwright');
});
afterEach(() => rm(folder, { recursive: true, force: true }));

const OLD = '{"format":"depthwright-movement","title":"old"}';
const NEW = `{"format":"depthwright-movement","title":"new","note":"${'long '.repeat(40_000)}"}`;

/** Digest of what a file holds, as reading gives it. */
async function digestOf(path: string): Promise<string> {
  const read = await readDocumentFile(path);
  if (read.kind !== 'read') throw new Error(read.says);
  return read.digest;
}

describe('each file call fails in turn', () => {
  /** One save over an old file, watched; with `at` the call of that number fails. */
  async function save(at: number | undefined, code: string) {
    await writeFile(file, OLD);
    await rm(file + PREVIOUS, { force: true });
    const digest = await digestOf(file);
    const watch = watchCalls(at === undefined ? undefined : { at, code });
    try {
      const outcome = await saveDocumentFile(file, NEW, digest);
      return { outcome, calls: watch.calls, left: watch.openFiles.size };
    } finally {
      watch.stop();
    }
  }

  test('the old or the new text stands, never a part; nothing else is left; the first error is told', async () => {
    const { outcome, calls } = await save(undefined, '');
    expect(outcome.kind).toBe('saved');
    // A save that makes fewer calls than these would not be writing beside, flushing and renaming.
    for (const name of ['open', 'write', 'fsync', 'close', 'rename']) expect(calls).toContain(name);
    let refused = 0;
    for (let at = 0; at < calls.length; at++) {
      const told = await save(at, 'EIO');
      const text = await readFile(file, 'utf8');
      const name = `${calls[at]} (call ${at})`;
      if (told.outcome.kind === 'saved') {
        // Calls that only carry mode and owner over may fail without harm.
        expect(text, name).toBe(NEW);
        continue;
      }
      refused++;
      expect(text === OLD || text === NEW, name).toBe(true);
      expect(told.outcome, name).toMatchObject({ kind: 'failed', says: expect.stringMatching(/EIO/) });
      // A file whose closing failed cannot be closed again; all others are.
      expect(told.left, name).toBeLessThanOrEqual(calls[at] === 'close' ? 1 : 0);
      const names = await readdir(folder);
      expect(
        names.filter((each) => each !== 'movement.depthwright' && !each.endsWith(PREVIOUS)),
        name,
      ).toEqual([]);
    }
    expect(refused).toBeGreaterThanOrEqual(8);
  });

  test('before the rename of the document itself, a failure leaves the old text', async () => {
    const { calls } = await save(undefined, '');
    const last = calls.lastIndexOf('rename');
    for (const at of calls.keys()) {
      if (at > last) break;
      const { outcome } = await save(at, 'ENOSPC');
      if (outcome.kind !== 'saved') expect(await readFile(file, 'utf8'), calls[at] ?? '').toBe(OLD);
    }
  });

  test('a write that takes one byte less is gone on with: the new text stands whole', async () => {
    const { calls } = await save(undefined, '');
    const writes = [...calls.keys()].filter((at) => calls[at] === 'write');
    expect(writes.length).toBe(2);
    for (const at of writes) {
      const told = await save(at, 'short');
      expect(told.calls.filter((name) => name === 'write').length).toBe(3);
      expect(told.outcome.kind).toBe('saved');
      expect(await readFile(file, 'utf8')).toBe(NEW);
      expect(await readFile(file + PREVIOUS, 'utf8')).toBe(OLD);
    }
  });

  test('a disk that takes no more is told: never "saved", the old text and the version before it stand', async () => {
    const { calls } = await save(undefined, '');
    for (const at of [...calls.keys()].filter((each) => calls[each] === 'write')) {
      const told = await save(at, 'cut');
      expect(told.outcome).toMatchObject({ kind: 'failed', says: expect.stringMatching(/disk is full.*ENOSPC/) });
      expect(told.left).toBe(0);
      expect(await readFile(file, 'utf8')).toBe(OLD);
      expect((await readdir(folder)).filter((name) => name.endsWith(PIECE))).toEqual([]);
    }
  });

  test('an export cut off by the disk is told, and no piece of it is left', async () => {
    const watch = watchCalls({ at: 2, code: 'cut' });
    const outcome = await writeIntoFolder(folder, [{ name: 'plate.dxf', content: NEW }]).finally(watch.stop);
    expect(watch.calls).toContain('write');
    expect(outcome).toMatchObject({ kind: 'failed', says: expect.stringMatching(/ENOSPC.*Nothing was written/) });
    expect(await readdir(folder)).toEqual([]);
  });

  test('a rename held by another program is tried again', async () => {
    const { calls } = await save(undefined, '');
    const { outcome } = await save(calls.lastIndexOf('rename'), 'EBUSY');
    expect(outcome.kind).toBe('saved');
    expect(await readFile(file, 'utf8')).toBe(NEW);
  });

  test('reading tells each failure', async () => {
    await writeFile(file, OLD);
    for (const at of [0, 1]) {
      const watch = watchCalls({ at, code: 'EACCES' });
      const read = await readDocumentFile(file);
      watch.stop();
      expect(read).toMatchObject({ kind: 'failed', says: expect.stringMatching(/access is denied.*EACCES/) });
    }
  });
});

test('the version that a save replaces stands beside it; the same text again keeps it', async () => {
  await writeFile(file, OLD);
  await saveDocumentFile(file, NEW);
  await saveDocumentFile(file, NEW);
  expect(await readFile(file + PREVIOUS, 'utf8')).toBe(OLD);
  await saveDocumentFile(file, 'third');
  expect(await readFile(file + PREVIOUS, 'utf8')).toBe(NEW);
});

test('a file changed on disk since it was read is not overwritten', async () => {
  await writeFile(file, OLD);
  const digest = await digestOf(file);
  // The same length and, set back, the same time: only the bytes tell.
  const { atime, mtime } = await stat(file);
  await writeFile(file, OLD.replace('old', 'odd'));
  const { utimes } = await import('node:fs/promises');
  await utimes(file, atime, mtime);
  expect(await saveDocumentFile(file, NEW, digest)).toEqual({ kind: 'changedOnDisk' });
  expect(await readFile(file, 'utf8')).toContain('odd');
  expect((await saveDocumentFile(file, NEW)).kind).toBe('saved');
});

test('a file that vanished is written anew', async () => {
  await writeFile(file, OLD);
  const digest = await digestOf(file);
  await unlink(file);
  expect((await saveDocumentFile(file, NEW, digest)).kind).toBe('saved');
});

test('mode is kept and links are followed', async () => {
  const real = join(folder, 'real.depthwright');
  await writeFile(real, OLD);
  await chmod(real, 0o640);
  await symlink(real, file);
  expect((await saveDocumentFile(file, NEW)).kind).toBe('saved');
  expect((await lstat(file)).isSymbolicLink()).toBe(true);
  expect(await readFile(real, 'utf8')).toBe(NEW);
  expect((await stat(real)).mode & 0o777).toBe(0o640);
});

test('saves of one path queue: the last one asked for stands, each whole', async () => {
  const texts = Array.from({ length: 20 }, (_, i) => `${OLD} ${i}:`.repeat(1000));
  const outcomes = await Promise.all(texts.map((text) => saveDocumentFile(file, text)));
  expect(outcomes.every(({ kind }) => kind === 'saved')).toBe(true);
  expect(await readFile(file, 'utf8')).toBe(texts.at(-1));
  expect(await readFile(file + PREVIOUS, 'utf8')).toBe(texts.at(-2));
});

test('a file marked read-only is asked about; a yes replaces it and leaves its mark', async () => {
  await writeFile(file, OLD);
  await chmod(file, 0o444);
  const digest = await digestOf(file);
  expect(await saveDocumentFile(file, NEW, digest)).toEqual({ kind: 'readOnly' });
  expect(await readFile(file, 'utf8')).toBe(OLD);
  expect((await saveDocumentFile(file, NEW, digest, new Set(['readOnly'] as const))).kind).toBe('saved');
  expect((await stat(file)).mode & 0o777).toBe(0o444);
});

test('a link to nothing is asked about; a yes puts the file where the link was', async () => {
  await symlink('gone.depthwright', file);
  expect(await saveDocumentFile(file, NEW)).toEqual({ kind: 'linkToNothing', to: 'gone.depthwright' });
  expect((await lstat(file)).isSymbolicLink()).toBe(true);
  expect((await saveDocumentFile(file, NEW, undefined, new Set(['linkToNothing'] as const))).kind).toBe('saved');
  expect(await readFile(file, 'utf8')).toBe(NEW);
});

test('the kept version has the mode of its file, and never takes the place of a file of another kind', async () => {
  await writeFile(file, OLD);
  await chmod(file, 0o600);
  await writeFile(file + PREVIOUS, 'letters of mine');
  expect((await saveDocumentFile(file, NEW)).kind).toBe('saved');
  expect(await readFile(file + PREVIOUS, 'utf8')).toBe('letters of mine');
  expect(await readFile(`${file}${PREVIOUS}-2`, 'utf8')).toBe(OLD);
  expect((await stat(`${file}${PREVIOUS}-2`)).mode & 0o777).toBe(0o600);
});

test('a change by another between the first look and the rename is seen', async () => {
  await writeFile(file, OLD);
  const digest = await digestOf(file);
  const theirs = OLD.replace('old', 'theirs');
  // The version before is renamed first; what happens then comes after the first look.
  const rename = fs.rename.bind(fs);
  const spy = vi.spyOn(fs, 'rename').mockImplementationOnce((from, to, done) => {
    fs.writeFileSync(file, theirs);
    rename(from, to, done);
  });
  const outcome = await saveDocumentFile(file, NEW, digest).finally(() => spy.mockRestore());
  expect(outcome).toEqual({ kind: 'changedOnDisk' });
  expect(await readFile(file, 'utf8')).toBe(theirs);
  expect((await readdir(folder)).filter((name) => name.endsWith(PIECE))).toEqual([]);
});

test('pieces of runs that are gone are swept, those of a run that is alive stay', async () => {
  const gone = spawnSync(process.execPath, ['-e', '']).pid;
  const names = [
    `a.depthwright.${gone}-1${PIECE}`,
    `a.depthwright.${process.pid}-9${PIECE}`,
    `b.${gone}-2${PIECE}`,
    'a.piece',
  ];
  for (const name of names) await writeFile(join(folder, name), 'part');
  await sweepPieces(folder, (name) => name.startsWith('a.'));
  expect((await readdir(folder)).sort()).toEqual(names.slice(1).sort());
  await sweepPieces(folder);
  expect(await readdir(folder)).not.toContain(names[2]);
});

test('UTF-16 is read, an old encoding is not guessed, and bytes that are no text are told', async () => {
  const text = OLD.replace('old', 'Räderwerk Ø 5');
  await writeFile(file, Buffer.from(`\uFEFF${text}`, 'utf16le'));
  expect(await readDocumentFile(file)).toMatchObject({ kind: 'read', text });
  await writeFile(file, Buffer.from(text, 'utf16le').swap16());
  expect(await readDocumentFile(file)).toMatchObject({ kind: 'read', text });
  await writeFile(file, Buffer.from(text, 'latin1'));
  expect(await readDocumentFile(file)).toMatchObject({
    kind: 'unknownEncoding',
    says: expect.stringContaining('UTF-8'),
  });
  expect(await readDocumentFile(file, 'windows-1252')).toMatchObject({ kind: 'read', text });
  await writeFile(file, Buffer.from([0xff, 0xd8, 0xff, 0xe0, 0, 0x10, 0x4a]));
  expect(await readDocumentFile(file)).toMatchObject({ kind: 'failed', says: expect.stringContaining('no text') });
});

test('saving into a folder that is gone says so', async () => {
  const outcome = await saveDocumentFile(join(folder, 'gone', 'm.json'), NEW);
  expect(outcome).toMatchObject({ kind: 'failed', says: expect.stringMatching(/m\.json could not be saved.*ENOENT/) });
});

test('a byte order mark is left out, and too large a file is refused with its size', async () => {
  await writeFile(file, `\uFEFF${OLD}`);
  expect(await readDocumentFile(file)).toMatchObject({ kind: 'read', text: OLD });
  const { truncate } = await import('node:fs/promises');
  await truncate(file, 300 * 1024 * 1024);
  expect(await readDocumentFile(file)).toMatchObject({ kind: 'failed', says: expect.stringContaining('314572800') });
});
