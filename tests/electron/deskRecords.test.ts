/** The desk and its own records: recent files, recovery, versions of the last days. */
import { readFile, rm, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { describe, expect, test, vi } from 'vitest';
import { RecentFiles } from '../../electron/files/recentFiles.ts';
import { RecordTroubles } from '../../electron/files/recordTroubles.ts';
import { Recovery } from '../../electron/files/recovery.ts';
import { timesKept } from '../../electron/files/versions.ts';
import { Safekeeping } from '../../electron/main/safekeeping.ts';

import { deskWith, noTrouble, opened, place, stateOf } from './deskRig.ts';

describe('recent files', () => {
  test('newest first, no doubles, kept between runs, without paths', async () => {
    const other = join(place.folder, 'b.json');
    await writeFile(other, 'b');
    const { desk, recent } = deskWith({});
    for (const path of [place.file, other, place.file]) await desk.openPath(path);
    const again = new RecentFiles(join(place.folder, 'recent.json'), noTrouble);
    await again.read();
    expect(again.list().map(({ name }) => name)).toEqual(['a.depthwright', 'b.json']);
    expect(again.list()).toEqual(recent.list());
    expect(JSON.stringify(again.list())).not.toContain(place.folder);
    expect((await desk.openRecent(again.list()[1]?.id ?? '')).kind).toBe('opened');
    expect((await desk.openRecent('nonsense')).kind).toBe('failed');
  });

  test('a place.file that is gone leaves the list; a damaged list is set aside and told once', async () => {
    const { desk, recent, said } = deskWith({});
    await desk.openPath(place.file);
    await rm(place.file);
    await desk.openPath(place.file);
    expect(recent.list()).toEqual([]);
    await writeFile(join(place.folder, 'recent.json'), '{"paths":[1');
    await recent.read();
    expect(recent.list()).toEqual([]);
    expect(await readFile(join(place.folder, 'recent.json.damaged'), 'utf8')).toBe('{"paths":[1');
    await writeFile(join(place.folder, 'recent.json'), '{"paths":[1');
    await recent.read();
    expect(said).toEqual([
      expect.stringMatching(/^The list of recent files was damaged and was set aside\. Opening and/),
    ]);
  });

  test('a list of a newer program is told and left as it is', async () => {
    const newer = JSON.stringify({ recordVersion: 2, lists: [] });
    await writeFile(join(place.folder, 'recent.json'), newer);
    const { desk, recent, said } = deskWith({});
    await recent.read();
    expect((await desk.openPath(place.file)).kind).toBe('opened');
    expect(recent.list()).toHaveLength(1);
    expect(await readFile(join(place.folder, 'recent.json'), 'utf8')).toBe(newer);
    expect(said).toEqual([expect.stringContaining('newer Depthwright')]);
  });

  test('records that cannot be written are told once each, and stand in the way of nothing', async () => {
    // A place.file where their place.folder should be: no user may make a place.folder there.
    await writeFile(join(place.folder, 'block'), '');
    const said: string[] = [];
    const troubles = new RecordTroubles((says) => said.push(says));
    const recent = new RecentFiles(join(place.folder, 'block', 'recent.json'), troubles);
    const safekeeping = new Safekeeping(new Recovery(join(place.folder, 'block', 'recovery'), 1, troubles));
    const { desk } = deskWith({}, undefined, 1, { recent, safekeeping });
    await recent.read();
    const { handle } = opened(await desk.openPath(place.file));
    await desk.tellState(stateOf(handle, true));
    for (let i = 0; i < 3; i++) {
      await safekeeping.keep(() => Promise.resolve({ handle, text: `mine ${i}` }), desk.documents, 5000);
    }
    expect(safekeeping.isNeeded).toBe(true);
    expect(await desk.save({ handle, text: 'mine' })).toMatchObject({ kind: 'saved' });
    expect(await readFile(place.file, 'utf8')).toBe('mine');
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
    const { handle } = opened(await first.desk.openPath(place.file));
    await first.desk.tellState(stateOf(handle, true));
    await keep(first, handle, 'half done');
    const second = deskWith({ takeUp: () => Promise.resolve('takeUp') });
    const document = await second.desk.takeUpLeftWork();
    expect(document).toMatchObject({ text: 'half done', unsaved: true, name: 'a.depthwright' });
    // Saved, it goes into its place.file, and nothing is left any more.
    const recovered = document?.handle ?? '';
    await second.desk.tellState(stateOf(recovered, true));
    expect(await second.desk.save({ handle: recovered, text: 'done' })).toMatchObject({ kind: 'saved' });
    expect(await readFile(place.file, 'utf8')).toBe('done');
    expect(await deskWith({}).desk.takeUpLeftWork()).toBeUndefined();
  });

  test('saved work, and work let go, is not offered', async () => {
    const set = deskWith({ saveChanges: () => Promise.resolve('letGo') });
    const { handle } = opened(await set.desk.openPath(place.file));
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
    const { handle } = opened(await set.desk.openPath(place.file));
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
    const { handle } = opened(await set.desk.openPath(place.file));
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
    const recovery = new Recovery(join(place.folder, 'recovery'), 1, new RecordTroubles((says) => said.push(says)));
    await recovery.keep({ name: 'x', text: 'whole', keptAtMs: 1 });
    await writeFile(join(place.folder, 'recovery', '9.json'), '{"name":');
    expect((await recovery.newest())?.work.text).toBe('whole');
    expect(said).toEqual([expect.stringContaining('cannot be offered')]);
  });
});

describe('versions of the last days', () => {
  test('what was opened and saved can be compared and gone back to; its place.file changes on saving only', async () => {
    const { desk } = deskWith({ saveChanges: () => Promise.resolve('letGo') });
    const { handle } = opened(await desk.openPath(place.file));
    for (const text of ['first', 'second', 'second']) await desk.save({ handle, text });
    const versions = await desk.versions(handle);
    const texts = await Promise.all(versions.map(({ id }) => desk.versionText(handle, id)));
    expect(texts).toEqual(['second', 'first', 'on disk'].map((text) => ({ kind: 'read', text })));
    await desk.tellState(stateOf(handle, true));
    const back = opened(await desk.goBackTo(handle, versions[1]?.id ?? ''));
    expect(back).toMatchObject({ handle, text: 'first', unsaved: true });
    expect(await readFile(place.file, 'utf8')).toBe('second');
    expect(await desk.save({ handle, text: back.text })).toMatchObject({ kind: 'saved' });
    expect(await readFile(place.file, 'utf8')).toBe('first');
  });

  test('a movement without a place.file has none, and a name that is no number reads nothing', async () => {
    const { desk } = deskWith({});
    const blank = desk.documents.add().handle;
    expect(await desk.versions(blank)).toEqual([]);
    expect(await desk.versionText(blank, '1')).toMatchObject({ kind: 'failed' });
    const { handle } = opened(await desk.openPath(place.file));
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
