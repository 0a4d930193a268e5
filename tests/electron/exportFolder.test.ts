/** Exported files: bare names only, each whole, and what was written is told when one fails. */
import { mkdtemp, readdir, readFile, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import fc from 'fast-check';
import { afterEach, beforeEach, expect, test } from 'vitest';
import { namesTrouble, nameTrouble, presentNames, writeIntoFolder } from '../../electron/files/exportFolder.ts';
import { watchCalls } from './failingCalls.ts';

let folder: string;
beforeEach(async () => {
  folder = await mkdtemp(join(tmpdir(), 'depthwright-export-'));
});
afterEach(() => rm(folder, { recursive: true, force: true }));

test.each([
  '',
  '.',
  '..',
  '../outside.dxf',
  'a/b.dxf',
  'a\\b.dxf',
  '/etc/passwd',
  'C:\\x.dxf',
  'C:x.dxf',
  'nul.dxf',
  'COM1',
  'a\0b.dxf',
  'line\nbreak.dxf',
  '.hidden',
  'dot.',
  'blank ',
  'star*.dxf',
  'x'.repeat(201),
])('%j is refused and nothing is written', async (name) => {
  expect(nameTrouble(name)).toBeDefined();
  const files = [
    { name: 'first.dxf', content: '0' },
    { name, content: '0' },
  ];
  expect((await writeIntoFolder(folder, files)).kind).toBe('failed');
  expect(await readdir(folder)).toEqual([]);
});

test('any accepted name stays inside the folder', () => {
  fc.assert(
    fc.property(fc.string({ unit: 'binary', maxLength: 40 }), (name) => {
      if (nameTrouble(name) !== undefined) return;
      const path = join('/folder', name);
      expect(path).toBe(`/folder/${name}`);
    }),
  );
});

test('doubles are refused, letters of either case counting as the same', () => {
  expect(namesTrouble(['plate.dxf', 'Plate.DXF'])).toMatch(/Plate\.DXF/);
  expect(namesTrouble(['plate.dxf', 'plate.svg'])).toBeUndefined();
});

test('text and bytes are written; files that exist are found', async () => {
  const bytes = Uint8Array.from([37, 80, 68, 70, 0, 255]);
  await writeFile(join(folder, 'b.pdf'), 'before');
  expect(await presentNames(folder, ['a.dxf', 'b.pdf'])).toEqual(['b.pdf']);
  const outcome = await writeIntoFolder(folder, [
    { name: 'a.dxf', content: '  0\n' },
    { name: 'b.pdf', content: bytes },
  ]);
  expect(outcome).toEqual({ kind: 'written', names: ['a.dxf', 'b.pdf'] });
  expect(await readFile(join(folder, 'a.dxf'), 'utf8')).toBe('  0\n');
  expect(new Uint8Array(await readFile(join(folder, 'b.pdf')))).toEqual(bytes);
});

test('a failure in the second file tells the first, and no part of a file is left', async () => {
  const files = ['a.dxf', 'b.dxf'].map((name) => ({ name, content: name }));
  const watched = watchCalls();
  await writeIntoFolder(folder, files);
  watched.stop();
  const second = watched.calls.lastIndexOf('fsync');
  await rm(join(folder, 'b.dxf'));
  const watch = watchCalls({ at: second, code: 'ENOSPC' });
  const outcome = await writeIntoFolder(folder, files);
  watch.stop();
  expect(outcome).toMatchObject({
    kind: 'failed',
    says: expect.stringMatching(/b\.dxf.*full.*Written before it: a\.dxf/),
  });
  expect(await readdir(folder)).toEqual(['a.dxf']);
});
