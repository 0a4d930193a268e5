/** A desk without a window, with a folder of its own for each test, and a maker who answers. */
import { mkdtemp, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, expect } from 'vitest';
import type { DocumentText, OpenReply, PageState } from '../../electron/bridge.ts';
import { RecentFiles } from '../../electron/files/recentFiles.ts';
import { RecordTroubles } from '../../electron/files/recordTroubles.ts';
import { Recovery } from '../../electron/files/recovery.ts';
import { Versions } from '../../electron/files/versions.ts';
import { Desk } from '../../electron/main/desk.ts';
import type { Questions } from '../../electron/main/questions.ts';
import { Safekeeping } from '../../electron/main/safekeeping.ts';

/** The test's own folder, and a file in it that holds "on disk". */
export const place = { folder: '', file: '' };
beforeEach(async () => {
  place.folder = await mkdtemp(join(tmpdir(), 'depthwright-desk-'));
  place.file = join(place.folder, 'a.depthwright');
  await writeFile(place.file, 'on disk');
});
afterEach(() => rm(place.folder, { recursive: true, force: true }));

/** A desk whose maker gives the stated answers; any other question fails the test. */
export function deskWith(
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
  const recent = new RecentFiles(join(place.folder, 'recent.json'), troubles);
  const safekeeping = new Safekeeping(new Recovery(join(place.folder, 'recovery'), startedAtMs, troubles));
  const desk = new Desk({
    questions,
    recent: own.recent ?? recent,
    safekeeping: own.safekeeping ?? safekeeping,
    versions: new Versions(join(place.folder, 'versions'), troubles),
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
export function stateOf(handle: string, unsaved: boolean): PageState {
  changes++;
  return { handle, title: 'A', unsaved, change: changes, possible: [] };
}
/** For records that must give none. */
export const noTrouble = new RecordTroubles((says) => expect.unreachable(says));

/** The document of a reply that opened one. */
export function opened(reply: OpenReply) {
  if (reply.kind !== 'opened') throw new Error(`Not opened: ${JSON.stringify(reply)}`);
  return reply.document;
}
