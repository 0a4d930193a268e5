/** The desk without a window: what is asked, what is given up, what is said. */
import { chmod, readFile, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { PREVIOUS } from '../../electron/files/previousVersion.ts';
import { FORMAT } from '../../solver/movement/schema.ts';

import { deskWith, opened, place, stateOf } from './deskRig.ts';

describe('saving', () => {
  test('an opened place.file is saved in place without a question, the previous version kept', async () => {
    const [before, mine, again] = ['before', 'mine', 'mine again'].map(
      (title) => `{"format":"${FORMAT}","title":"${title}"}`,
    );
    await writeFile(place.file, before ?? '');
    const { desk, asked } = deskWith({});
    const { handle, text } = opened(await desk.openPath(place.file));
    expect(text).toBe(before);
    expect(await desk.save({ handle, text: mine ?? '' })).toEqual({ kind: 'saved', handle, name: 'a.depthwright' });
    expect(await desk.save({ handle, text: again ?? '' })).toMatchObject({ kind: 'saved' });
    expect([await readFile(place.file, 'utf8'), await readFile(place.file + PREVIOUS, 'utf8')]).toEqual([again, mine]);
    expect(asked).toEqual([]);
  });

  test('a document without a place.file asks for a place; saying no writes nothing', async () => {
    const { desk } = deskWith({ fileToSave: () => Promise.resolve(undefined) });
    const { handle } = desk.documents.add();
    expect(await desk.save({ handle, text: 'mine' })).toEqual({ kind: 'cancelled' });
  });

  test.each([
    ['replace', 'mine', 'saved'],
    ['cancel', 'theirs', 'cancelled'],
    ['elsewhere', 'theirs', 'saved'],
  ] as const)('a place.file changed on disk: %s', async (answer, stands, kind) => {
    const other = join(place.folder, 'b.depthwright');
    const { desk, asked } = deskWith({
      overChanged: () => Promise.resolve(answer),
      fileToSave: () => Promise.resolve(other),
    });
    const { handle } = opened(await desk.openPath(place.file));
    await writeFile(place.file, 'theirs');
    expect((await desk.save({ handle, text: 'mine' })).kind).toBe(kind);
    expect(await readFile(place.file, 'utf8')).toBe(stands);
    expect(asked[0]).toBe('overChanged');
    if (answer === 'elsewhere') expect(await readFile(other, 'utf8')).toBe('mine');
  });

  test.each([
    ['replace', 'mine', 'saved'],
    ['cancel', 'on disk', 'cancelled'],
  ] as const)('a place.file marked read-only: %s', async (answer, stands, kind) => {
    const { desk, asked } = deskWith({ overReadOnly: () => Promise.resolve(answer) });
    const { handle } = opened(await desk.openPath(place.file));
    await chmod(place.file, 0o444);
    expect((await desk.save({ handle, text: 'mine' })).kind).toBe(kind);
    expect(await readFile(place.file, 'utf8')).toBe(stands);
    expect(asked).toEqual(['overReadOnly']);
  });

  test('an old encoding is asked for with how the place.file reads in each; saying no opens nothing', async () => {
    await writeFile(place.file, Buffer.from('{"title":"Räderwerk"}', 'latin1'));
    let samples: readonly string[] = [];
    const asking = deskWith({
      encodingOf: (_name, choices) => {
        samples = choices.map(({ sample }) => sample);
        return Promise.resolve('windows-1252' as const);
      },
    });
    expect(opened(await asking.desk.openPath(place.file)).text).toBe('{"title":"Räderwerk"}');
    expect(samples[0]).toContain('Räderwerk');
    expect(samples.length).toBeGreaterThan(1);
    const refusing = deskWith({ encodingOf: () => Promise.resolve(undefined) });
    expect(await refusing.desk.openPath(place.file)).toEqual({ kind: 'cancelled' });
  });

  test('a failed save says why, and the document stays unsaved', async () => {
    const { desk } = deskWith({ fileToSave: () => Promise.resolve(join(place.folder, 'gone', 'x.depthwright')) });
    const { handle } = desk.documents.add();
    await desk.tellState(stateOf(handle, true));
    expect(await desk.save({ handle, text: 'mine' })).toMatchObject({ kind: 'failed' });
    expect(desk.state?.unsaved).toBe(true);
  });

  test('a handle that the shell never gave is refused', async () => {
    const { desk } = deskWith({});
    await expect(desk.save({ handle: place.file, text: 'x' })).rejects.toThrow(/never opened/);
  });
});

describe('leaving unsaved work', () => {
  /** An unsaved document at the desk; the page gives its text when asked. */
  async function unsaved(answer: 'save' | 'letGo' | 'cancel', gives = true) {
    // The handle is known only once the document is open.
    const text = { handle: '', text: 'mine' };
    const set = deskWith({ saveChanges: () => Promise.resolve(answer) }, gives ? text : undefined);
    text.handle = opened(await set.desk.openPath(place.file)).handle;
    await set.desk.tellState(stateOf(text.handle, true));
    return set;
  }

  test('saved work is left without a question', async () => {
    const { desk, asked } = deskWith({});
    await desk.tellState(stateOf(opened(await desk.openPath(place.file)).handle, false));
    expect([await desk.mayLeave(), asked]).toEqual([true, []]);
  });

  test('"save" writes the page’s text and tells the page', async () => {
    const { desk, said } = await unsaved('save');
    expect(await desk.mayLeave()).toBe(true);
    expect(await readFile(place.file, 'utf8')).toBe('mine');
    expect(said).toEqual(['saved a.depthwright']);
    expect(desk.state?.unsaved).toBe(false);
  });

  test('"cancel" stays, and opening another place.file opens nothing', async () => {
    const { desk } = await unsaved('cancel');
    expect(await desk.mayLeave()).toBe(false);
    const other = join(place.folder, 'b.json');
    await writeFile(other, 'b');
    expect(await desk.openPath(other)).toEqual({ kind: 'cancelled' });
    expect(await desk.newDocument()).toEqual({ kind: 'cancelled' });
    expect(await readFile(place.file, 'utf8')).toBe('on disk');
  });

  test('"don’t save" leaves the place.file as it is', async () => {
    const { desk } = await unsaved('letGo');
    expect(await desk.mayLeave()).toBe(true);
    expect(await readFile(place.file, 'utf8')).toBe('on disk');
  });

  test('a page that gives no text keeps the window open and says so', async () => {
    const { desk, said } = await unsaved('save', false);
    expect(await desk.mayLeave()).toBe(false);
    expect(said[0]).toMatch(/nothing was saved/);
  });

  test('a place.file that cannot be read asks nothing and leaves the open one', async () => {
    const { desk, asked } = await unsaved('cancel');
    expect(await desk.openPath(join(place.folder, 'none.json'))).toMatchObject({ kind: 'failed' });
    expect(asked).toEqual([]);
  });
});

describe('exporting', () => {
  const files = [
    { name: 'a.dxf', content: '0' },
    { name: 'b.svg', content: '<svg/>' },
  ];

  test('files that exist are replaced only after asking', async () => {
    const folderForExport = () => Promise.resolve(place.folder);
    await writeFile(join(place.folder, 'a.dxf'), 'before');
    const refusing = deskWith({ folderForExport, replaceFiles: () => Promise.resolve(false) });
    expect(await refusing.desk.exportFiles(files)).toEqual({ kind: 'cancelled' });
    expect(await readFile(join(place.folder, 'a.dxf'), 'utf8')).toBe('before');
    const asked: (readonly string[])[] = [];
    const replaceFiles = (names: readonly string[]) => {
      asked.push(names);
      return Promise.resolve(true);
    };
    const agreeing = deskWith({ folderForExport, replaceFiles });
    expect(await agreeing.desk.exportFiles(files)).toMatchObject({ kind: 'written', names: ['a.dxf', 'b.svg'] });
    expect(asked).toEqual([['a.dxf']]);
  });

  test('a bad name is refused before anything is asked', async () => {
    const { desk, asked } = deskWith({});
    const outcome = await desk.exportFiles([{ name: '../a.dxf', content: '0' }]);
    expect([outcome.kind, asked]).toEqual(['failed', []]);
  });
});
