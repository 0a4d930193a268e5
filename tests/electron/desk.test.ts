/** The desk without a window: what is asked, what is given up, what is said. */
import { chmod, mkdtemp, readFile, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, test, vi } from 'vitest';
import type { DocumentText, OpenReply, PageState } from '../../electron/bridge.ts';
import { PREVIOUS } from '../../electron/files/previousVersion.ts';
import { RecentFiles } from '../../electron/files/recentFiles.ts';
import { RecordTroubles } from '../../electron/files/recordTroubles.ts';
import { Recovery } from '../../electron/files/recovery.ts';
import { timesKept, Versions } from '../../electron/files/versions.ts';
import { Desk } from '../../electron/main/desk.ts';
import type { Questions } from '../../electron/main/questions.ts';
import { Safekeeping } from '../../electron/main/safekeeping.ts';
import { FORMAT } from '../../solver/movement/schema.ts';

let folder: string;
let file: string;
beforeEach(async () => {
  folder = await mkdtemp(join(tmpdir(), 'depthwright-desk-'));
  file = join(folder, 'a.depthwright');
  await writeFile(file, 'on disk');
});
afterEach(() => rm(folder, { recursive: true, force: true }));

/** A desk whose maker gives the stated answers; any other question fails the test. */
function deskWith(
  answers: Partial<Questions>,
  text?: DocumentText,
  startedAtMs = 1000,
  own: { recent?: RecentFiles; safekeeping?: Safekeeping } = {},
) {
  const asked: string[] = [];
  const said: string[] = [];
  const questions = new Proxy({} as Questions, {
    get: (_target, name: keyof Questions) => {
      return (...args: unknown[]) => {
        asked.push(name);
        const answer = answers[name] as ((...args: unknown[]) => unknown) | undefined;
        if (!answer) throw new Error(`The maker was asked ${name}.`);
        return Promise.resolve(answer(...args));
      };
    },
  });
  const troubles = new RecordTroubles((says) => said.push(says));
  const recent = new RecentFiles(join(folder, 'recent.json'), troubles);
  const safekeeping = new Safekeeping(new Recovery(join(folder, 'recovery'), startedAtMs, troubles));
  const desk = new Desk({
    questions,
    recent: own.recent ?? recent,
    safekeeping: own.safekeeping ?? safekeeping,
    versions: new Versions(join(folder, 'versions'), troubles),
    now: () => startedAtMs,
    presentText: () => Promise.resolve(text),
    onSaved: ({ name }) => said.push(`saved ${name}`),
    onFailed: (says) => said.push(says),
    onRecent: () => undefined,
  });
  return { desk, asked, said, recent, safekeeping };
}

let changes = 0;
/** What the page tells after one more change. */
function stateOf(handle: string, unsaved: boolean): PageState {
  changes++;
  return { handle, title: 'A', unsaved, change: changes, possible: [] };
}
const noTrouble = new RecordTroubles((says) => expect.unreachable(says));

/** The document of a reply that opened one. */
function opened(reply: OpenReply) {
  if (reply.kind !== 'opened') throw new Error(`Not opened: ${JSON.stringify(reply)}`);
  return reply.document;
}

describe('saving', () => {
  test('an opened file is saved in place without a question, the previous version kept', async () => {
    const [before, mine, again] = ['before', 'mine', 'mine again'].map(
      (title) => `{"format":"${FORMAT}","title":"${title}"}`,
    );
    await writeFile(file, before ?? '');
    const { desk, asked } = deskWith({});
    const { handle, text } = opened(await desk.openPath(file));
    expect(text).toBe(before);
    expect(await desk.save({ handle, text: mine ?? '' })).toEqual({ kind: 'saved', handle, name: 'a.depthwright' });
    expect(await desk.save({ handle, text: again ?? '' })).toMatchObject({ kind: 'saved' });
    expect([await readFile(file, 'utf8'), await readFile(file + PREVIOUS, 'utf8')]).toEqual([again, mine]);
    expect(asked).toEqual([]);
  });

  test('a document without a file asks for a place; saying no writes nothing', async () => {
    const { desk } = deskWith({ fileToSave: () => Promise.resolve(undefined) });
    const { handle } = desk.documents.add();
    expect(await desk.save({ handle, text: 'mine' })).toEqual({ kind: 'cancelled' });
  });

  test.each([
    ['replace', 'mine', 'saved'],
    ['cancel', 'theirs', 'cancelled'],
    ['elsewhere', 'theirs', 'saved'],
  ] as const)('a file changed on disk: %s', async (answer, stands, kind) => {
    const other = join(folder, 'b.depthwright');
    const { desk, asked } = deskWith({
      overChanged: () => Promise.resolve(answer),
      fileToSave: () => Promise.resolve(other),
    });
    const { handle } = opened(await desk.openPath(file));
    await writeFile(file, 'theirs');
    expect((await desk.save({ handle, text: 'mine' })).kind).toBe(kind);
    expect(await readFile(file, 'utf8')).toBe(stands);
    expect(asked[0]).toBe('overChanged');
    if (answer === 'elsewhere') expect(await readFile(other, 'utf8')).toBe('mine');
  });

  test.each([
    ['replace', 'mine', 'saved'],
    ['cancel', 'on disk', 'cancelled'],
  ] as const)('a file marked read-only: %s', async (answer, stands, kind) => {
    const { desk, asked } = deskWith({ overReadOnly: () => Promise.resolve(answer) });
    const { handle } = opened(await desk.openPath(file));
    await chmod(file, 0o444);
    expect((await desk.save({ handle, text: 'mine' })).kind).toBe(kind);
    expect(await readFile(file, 'utf8')).toBe(stands);
    expect(asked).toEqual(['overReadOnly']);
  });

  test('an old encoding is asked for with how the file reads in each; saying no opens nothing', async () => {
    await writeFile(file, Buffer.from('{"title":"Räderwerk"}', 'latin1'));
    let samples: readonly string[] = [];
    const asking = deskWith({
      encodingOf: (_name, choices) => {
        samples = choices.map(({ sample }) => sample);
        return Promise.resolve('windows-1252' as const);
      },
    });
    expect(opened(await asking.desk.openPath(file)).text).toBe('{"title":"Räderwerk"}');
    expect(samples[0]).toContain('Räderwerk');
    expect(samples.length).toBeGreaterThan(1);
    const refusing = deskWith({ encodingOf: () => Promise.resolve(undefined) });
    expect(await refusing.desk.openPath(file)).toEqual({ kind: 'cancelled' });
  });

  test('a failed save says why, and the document stays unsaved', async () => {
    const { desk } = deskWith({ fileToSave: () => Promise.resolve(join(folder, 'gone', 'x.depthwright')) });
    const { handle } = desk.documents.add();
    await desk.tellState(stateOf(handle, true));
    expect(await desk.save({ handle, text: 'mine' })).toMatchObject({ kind: 'failed' });
    expect(desk.state?.unsaved).toBe(true);
  });

  test('a handle that the shell never gave is refused', async () => {
    const { desk } = deskWith({});
    await expect(desk.save({ handle: file, text: 'x' })).rejects.toThrow(/never opened/);
  });
});

describe('leaving unsaved work', () => {
  /** An unsaved document at the desk; the page gives its text when asked. */
  async function unsaved(answer: 'save' | 'letGo' | 'cancel', gives = true) {
    // The handle is known only once the document is open.
    const text = { handle: '', text: 'mine' };
    const set = deskWith({ saveChanges: () => Promise.resolve(answer) }, gives ? text : undefined);
    text.handle = opened(await set.desk.openPath(file)).handle;
    await set.desk.tellState(stateOf(text.handle, true));
    return set;
  }

  test('saved work is left without a question', async () => {
    const { desk, asked } = deskWith({});
    await desk.tellState(stateOf(opened(await desk.openPath(file)).handle, false));
    expect([await desk.mayLeave(), asked]).toEqual([true, []]);
  });

  test('"save" writes the page’s text and tells the page', async () => {
    const { desk, said } = await unsaved('save');
    expect(await desk.mayLeave()).toBe(true);
    expect(await readFile(file, 'utf8')).toBe('mine');
    expect(said).toEqual(['saved a.depthwright']);
    expect(desk.state?.unsaved).toBe(false);
  });

  test('"cancel" stays, and opening another file opens nothing', async () => {
    const { desk } = await unsaved('cancel');
    expect(await desk.mayLeave()).toBe(false);
    const other = join(folder, 'b.json');
    await writeFile(other, 'b');
    expect(await desk.openPath(other)).toEqual({ kind: 'cancelled' });
    expect(await desk.newDocument()).toEqual({ kind: 'cancelled' });
    expect(await readFile(file, 'utf8')).toBe('on disk');
  });

  test('"don’t save" leaves the file as it is', async () => {
    const { desk } = await unsaved('letGo');
    expect(await desk.mayLeave()).toBe(true);
    expect(await readFile(file, 'utf8')).toBe('on disk');
  });

  test('a page that gives no text keeps the window open and says so', async () => {
    const { desk, said } = await unsaved('save', false);
    expect(await desk.mayLeave()).toBe(false);
    expect(said[0]).toMatch(/nothing was saved/);
  });

  test('a file that cannot be read asks nothing and leaves the open one', async () => {
    const { desk, asked } = await unsaved('cancel');
    expect(await desk.openPath(join(folder, 'none.json'))).toMatchObject({ kind: 'failed' });
    expect(asked).toEqual([]);
  });
});

describe('exporting', () => {
  const files = [
    { name: 'a.dxf', content: '0' },
    { name: 'b.svg', content: '<svg/>' },
  ];

  test('files that exist are replaced only after asking', async () => {
    const folderForExport = () => Promise.resolve(folder);
    await writeFile(join(folder, 'a.dxf'), 'before');
    const refusing = deskWith({ folderForExport, replaceFiles: () => Promise.resolve(false) });
    expect(await refusing.desk.exportFiles(files)).toEqual({ kind: 'cancelled' });
    expect(await readFile(join(folder, 'a.dxf'), 'utf8')).toBe('before');
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

describe('recent files', () => {
  test('newest first, no doubles, kept between runs, without paths', async () => {
    const other = join(folder, 'b.json');
    await writeFile(other, 'b');
    const { desk, recent } = deskWith({});
    for (const path of [file, other, file]) await desk.openPath(path);
    const again = new RecentFiles(join(folder, 'recent.json'), noTrouble);
    await again.read();
    expect(again.list().map(({ name }) => name)).toEqual(['a.depthwright', 'b.json']);
    expect(again.list()).toEqual(recent.list());
    expect(JSON.stringify(again.list())).not.toContain(folder);
    expect((await desk.openRecent(again.list()[1]?.id ?? '')).kind).toBe('opened');
    expect((await desk.openRecent('nonsense')).kind).toBe('failed');
  });

  test('a file that is gone leaves the list; a damaged list is set aside and told once', async () => {
    const { desk, recent, said } = deskWith({});
    await desk.openPath(file);
    await rm(file);
    await desk.openPath(file);
    expect(recent.list()).toEqual([]);
    await writeFile(join(folder, 'recent.json'), '{"paths":[1');
    await recent.read();
    expect(recent.list()).toEqual([]);
    expect(await readFile(join(folder, 'recent.json.damaged'), 'utf8')).toBe('{"paths":[1');
    await writeFile(join(folder, 'recent.json'), '{"paths":[1');
    await recent.read();
    expect(said).toEqual([
      expect.stringMatching(/^The list of recent files was damaged and was set aside\. Opening and/),
    ]);
  });

  test('a list of a newer program is told and left as it is', async () => {
    const newer = JSON.stringify({ recordVersion: 2, lists: [] });
    await writeFile(join(folder, 'recent.json'), newer);
    const { desk, recent, said } = deskWith({});
    await recent.read();
    expect((await desk.openPath(file)).kind).toBe('opened');
    expect(recent.list()).toHaveLength(1);
    expect(await readFile(join(folder, 'recent.json'), 'utf8')).toBe(newer);
    expect(said).toEqual([expect.stringContaining('newer Depthwright')]);
  });

  test('records that cannot be written are told once each, and stand in the way of nothing', async () => {
    // A file where their folder should be: no user may make a folder there.
    await writeFile(join(folder, 'block'), '');
    const said: string[] = [];
    const troubles = new RecordTroubles((says) => said.push(says));
    const recent = new RecentFiles(join(folder, 'block', 'recent.json'), troubles);
    const safekeeping = new Safekeeping(new Recovery(join(folder, 'block', 'recovery'), 1, troubles));
    const { desk } = deskWith({}, undefined, 1, { recent, safekeeping });
    await recent.read();
    const { handle } = opened(await desk.openPath(file));
    await desk.tellState(stateOf(handle, true));
    for (let i = 0; i < 3; i++) {
      await safekeeping.keep(() => Promise.resolve({ handle, text: `mine ${i}` }), desk.documents, 5000);
    }
    expect(safekeeping.isNeeded).toBe(true);
    expect(await desk.save({ handle, text: 'mine' })).toMatchObject({ kind: 'saved' });
    expect(await readFile(file, 'utf8')).toBe('mine');
    expect(await desk.takeUpLeftWork()).toBeUndefined();
    expect(said.filter((says) => /unsaved work.*save often/.test(says))).toHaveLength(1);
    expect(new Set(said).size).toBe(said.length);
  });
});

describe('recovery', () => {
  const keep = (set: ReturnType<typeof deskWith>, handle: string, text: string) =>
    set.safekeeping.keep(() => Promise.resolve({ handle, text }), set.desk.documents, 5000);

  test('unsaved work is taken up by the next run, and knows its file', async () => {
    const first = deskWith({});
    const { handle } = opened(await first.desk.openPath(file));
    await first.desk.tellState(stateOf(handle, true));
    await keep(first, handle, 'half done');
    const second = deskWith({ takeUp: () => Promise.resolve('takeUp') });
    const document = await second.desk.takeUpLeftWork();
    expect(document).toMatchObject({ text: 'half done', unsaved: true, name: 'a.depthwright' });
    // Saved, it goes into its file, and nothing is left any more.
    const recovered = document?.handle ?? '';
    await second.desk.tellState(stateOf(recovered, true));
    expect(await second.desk.save({ handle: recovered, text: 'done' })).toMatchObject({ kind: 'saved' });
    expect(await readFile(file, 'utf8')).toBe('done');
    expect(await deskWith({}).desk.takeUpLeftWork()).toBeUndefined();
  });

  test('saved work, and work let go, is not offered', async () => {
    const set = deskWith({ saveChanges: () => Promise.resolve('letGo') });
    const { handle } = opened(await set.desk.openPath(file));
    await set.desk.tellState(stateOf(handle, true));
    await keep(set, handle, 'half done');
    await set.desk.tellState(stateOf(handle, false));
    expect(await set.safekeeping.left()).toBeUndefined();
    await set.desk.tellState(stateOf(handle, true));
    await keep(set, handle, 'half done again');
    await set.desk.mayLeave();
    expect(await set.safekeeping.left()).toBeUndefined();
  });

  test('a page that crashed loses nothing that was kept', async () => {
    const set = deskWith({ takeUp: () => Promise.resolve('takeUp') });
    const { handle } = opened(await set.desk.openPath(file));
    await set.desk.tellState(stateOf(handle, true));
    await keep(set, handle, 'half done');
    set.desk.pageGone();
    // The page that starts again shows something saved first.
    await set.desk.tellState(stateOf(set.desk.documents.add().handle, false));
    expect((await set.desk.takeUpLeftWork())?.text).toBe('half done');
  });

  test('work that nobody took up stays while other work is kept; thrown away, it is gone', async () => {
    const first = deskWith({});
    const blank = first.desk.documents.add().handle;
    await first.desk.tellState(stateOf(blank, true));
    await keep(first, blank, 'first');
    const later = deskWith({ takeUp: () => Promise.resolve('later') }, undefined, 2000);
    expect(await later.desk.takeUpLeftWork()).toBeUndefined();
    const other = later.desk.documents.add().handle;
    await later.desk.tellState(stateOf(other, true));
    await keep(later, other, 'second');
    expect((await later.safekeeping.left())?.work.text).toBe('second');
    await later.desk.tellState(stateOf(other, false));
    expect((await later.safekeeping.left())?.work.text).toBe('first');
    const last = deskWith({ takeUp: () => Promise.resolve('throwAway') }, undefined, 3000);
    expect(await last.desk.takeUpLeftWork()).toBeUndefined();
    expect(await last.safekeeping.left()).toBeUndefined();
  });

  test('the page is asked for its text only after a change', async () => {
    const set = deskWith({});
    const { handle } = opened(await set.desk.openPath(file));
    const state = stateOf(handle, true);
    await set.desk.tellState(state);
    const ask = vi.fn(() => Promise.resolve({ handle, text: 'half done' }));
    await set.safekeeping.keep(ask, set.desk.documents, 5000);
    await set.desk.tellState({ ...state, title: 'B' });
    await set.safekeeping.keep(ask, set.desk.documents, 5000);
    expect(ask).toHaveBeenCalledOnce();
    await set.desk.tellState(stateOf(handle, true));
    await set.safekeeping.keep(ask, set.desk.documents, 5000);
    expect(ask).toHaveBeenCalledTimes(2);
  });

  test('a damaged record is set aside and told, and an older one is offered', async () => {
    const said: string[] = [];
    const recovery = new Recovery(join(folder, 'recovery'), 1, new RecordTroubles((says) => said.push(says)));
    await recovery.keep({ name: 'x', text: 'whole', keptAtMs: 1 });
    await writeFile(join(folder, 'recovery', '9.json'), '{"name":');
    expect((await recovery.newest())?.work.text).toBe('whole');
    expect(said).toEqual([expect.stringContaining('cannot be offered')]);
  });
});

describe('versions of the last days', () => {
  test('what was opened and saved can be compared and gone back to; its file changes on saving only', async () => {
    const { desk } = deskWith({ saveChanges: () => Promise.resolve('letGo') });
    const { handle } = opened(await desk.openPath(file));
    for (const text of ['first', 'second', 'second']) await desk.save({ handle, text });
    const versions = await desk.versions(handle);
    const texts = await Promise.all(versions.map(({ id }) => desk.versionText(handle, id)));
    expect(texts).toEqual(['second', 'first', 'on disk'].map((text) => ({ kind: 'read', text })));
    await desk.tellState(stateOf(handle, true));
    const back = opened(await desk.goBackTo(handle, versions[1]?.id ?? ''));
    expect(back).toMatchObject({ handle, text: 'first', unsaved: true });
    expect(await readFile(file, 'utf8')).toBe('second');
    expect(await desk.save({ handle, text: back.text })).toMatchObject({ kind: 'saved' });
    expect(await readFile(file, 'utf8')).toBe('first');
  });

  test('a movement without a file has none, and a name that is no number reads nothing', async () => {
    const { desk } = deskWith({});
    const blank = desk.documents.add().handle;
    expect(await desk.versions(blank)).toEqual([]);
    expect(await desk.versionText(blank, '1')).toMatchObject({ kind: 'failed' });
    const { handle } = opened(await desk.openPath(file));
    expect(await desk.versionText(handle, '../../a')).toMatchObject({ kind: 'failed' });
  });

  test('forty of the last day are kept, and the last one of each of fourteen days before', () => {
    const [hour, now] = [3_600_000, 100 * 86_400_000];
    const times = Array.from({ length: 1000 }, (_, i) => now - i * hour * 0.4);
    const kept = [...timesKept(times, now)].sort((a, b) => b - a);
    expect(kept.filter((time) => now - time < 24 * hour)).toEqual(times.slice(0, 40));
    const older = kept.filter((time) => now - time >= 24 * hour);
    expect(older).toHaveLength(14);
    for (const [i, time] of older.entries()) {
      expect(time).toBe(times.find((each) => now - each >= (i + 1) * 24 * hour));
    }
  });
});
