/**
 * Versions of the last days: every text that a document's file held when it was opened or saved here, to go back to.
 *
 * They lie in the program's own folder, one folder for each file, named by the time in ms. A day keeps all of them, up to
 * a number; the days before keep their last one.
 */
import { createHash } from 'node:crypto';
import { mkdir, readdir, readFile, rm, stat } from 'node:fs/promises';
import { join } from 'node:path';
import { atomicWrite } from './atomicWrite.ts';
import { codeOf, fileTrouble } from './fileTrouble.ts';
import { inPathQueue } from './pathQueue.ts';
import type { RecordTroubles } from './recordTroubles.ts';

const DAY_MS = 86_400_000;
/** Versions kept of the last day, and days of which the last one is kept. */
const MOST_OF_A_DAY = 40;
const DAYS = 14;

/** One kept version. */
export interface Version {
  /** Its name among those of its file. */
  readonly id: string;
  readonly keptAtMs: number;
  readonly bytes: number;
}

/** Which of the times, newest first, are kept at `nowMs`. */
export function timesKept(times: readonly number[], nowMs: number): ReadonlySet<number> {
  const sorted = [...times].sort((a, b) => b - a);
  const kept = new Set(sorted.filter((time) => nowMs - time < DAY_MS).slice(0, MOST_OF_A_DAY));
  const days = new Set<number>();
  for (const time of sorted) {
    const day = Math.floor((nowMs - time) / DAY_MS);
    if (day > DAYS || days.has(day)) continue;
    days.add(day);
    kept.add(time);
  }
  return kept;
}

/** Keeps, lists and reads versions. */
export class Versions {
  readonly #folder: string;
  readonly #troubles: RecordTroubles;

  constructor(folder: string, troubles: RecordTroubles) {
    this.#folder = folder;
    this.#troubles = troubles;
  }

  /** Keeps a text, where it is not the newest already, and drops what is too old. A failure is told. */
  async keep(path: string, text: string, nowMs: number): Promise<void> {
    const folder = this.#folderOf(path);
    await this.#troubles.wrote('versions', folder, () =>
      inPathQueue(folder, async () => {
        await mkdir(folder, { recursive: true });
        const times = await this.#times(folder);
        const newest = times.length > 0 ? Math.max(...times) : undefined;
        if (newest !== undefined && (await readFile(join(folder, nameOf(newest)), 'utf8')) === text) return;
        // Two of one millisecond are two versions still.
        const time = newest === undefined ? nowMs : Math.max(nowMs, newest + 1);
        await atomicWrite(join(folder, nameOf(time)), text);
        const kept = timesKept([...times, time], nowMs);
        for (const old of times) if (!kept.has(old)) await rm(join(folder, nameOf(old)), { force: true });
      }),
    );
  }

  /** The versions of a file, newest first; none where nothing was kept. */
  async list(path: string): Promise<readonly Version[]> {
    const folder = this.#folderOf(path);
    const times = await this.#times(folder).catch(() => []);
    const versions = await Promise.all(
      times.map(async (time) => {
        const { size } = await stat(join(folder, nameOf(time)));
        return { id: `${time}`, keptAtMs: time, bytes: size };
      }),
    );
    return versions.sort((a, b) => b.keptAtMs - a.keptAtMs);
  }

  /** The text of a version, or why there is none. */
  async text(
    path: string,
    id: string,
  ): Promise<{ readonly kind: 'read'; readonly text: string } | { readonly kind: 'failed'; readonly says: string }> {
    // Only a number of ours makes a file name.
    const file = join(this.#folderOf(path), nameOf(Number.parseInt(id, 10)));
    try {
      return { kind: 'read', text: await readFile(file, 'utf8') };
    } catch (error) {
      return { kind: 'failed', says: fileTrouble('read', file, error) };
    }
  }

  async #times(folder: string): Promise<number[]> {
    try {
      const names = await readdir(folder);
      return names.filter((name) => /^\d+\.depthwright$/.test(name)).map((name) => Number.parseInt(name, 10));
    } catch (error) {
      if (codeOf(error) === 'ENOENT') return [];
      throw error;
    }
  }

  #folderOf(path: string): string {
    return join(this.#folder, createHash('sha256').update(path).digest('hex').slice(0, 16));
  }
}

const nameOf = (time: number): string => `${time}.depthwright`;
