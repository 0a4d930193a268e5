/**
 * Work that was not saved, kept on a timer and offered after a crash.
 *
 * Each run of the program keeps one record, `<time of its start>.json`, and drops it when the work is saved or let go.
 * Only one run is alive at a time, so any record found at the start was left by a run that ended badly.
 */
import { readdir } from 'node:fs/promises';
import { join } from 'node:path';
import * as z from 'zod/mini';
import { codeOf } from './fileTrouble.ts';
import { dropKept, readKept, writeKept } from './keptJson.ts';
import type { RecordTroubles } from './recordTroubles.ts';

const keptWork = z.object({
  name: z.string(),
  text: z.string(),
  keptAtMs: z.number(),
  /** The document's file and what it held when it was read; absent for a movement without a file. */
  path: z.optional(z.string()),
  digest: z.optional(z.string()),
});
export type KeptWork = z.output<typeof keptWork>;

/** Keeps this run's unsaved work, and finds what other runs left. */
export class Recovery {
  readonly #folder: string;
  readonly #troubles: RecordTroubles;
  #record: string;

  /** @param startedAtMs time of this run's start, the name of its record */
  constructor(folder: string, startedAtMs: number, troubles: RecordTroubles) {
    this.#folder = folder;
    this.#record = join(folder, `${startedAtMs}.json`);
    this.#troubles = troubles;
  }

  /** Keeps the work; false where it could not be written, which is told. */
  keep(work: KeptWork): Promise<boolean> {
    return this.#troubles.wrote('recovery', this.#record, () => writeKept(this.#record, work));
  }

  /** Drops a record, this run's own unless another is named: the work was saved, or let go by the maker. */
  async drop(record = this.#record): Promise<void> {
    await this.#troubles.wrote('recovery', record, () => dropKept(record));
  }

  /** The newest record there is, with the work in it; older ones wait for the next start. */
  async newest(): Promise<{ readonly record: string; readonly work: KeptWork } | undefined> {
    for (const name of await this.#names()) {
      const record = join(this.#folder, name);
      const work = this.#troubles.valueOf('recovery', record, await readKept(record, keptWork));
      if (work) return { record, work };
    }
    return undefined;
  }

  /** This run goes on with a record that another left: the next `keep` replaces it, `drop` drops it. */
  goOnWith(record: string): void {
    this.#record = record;
  }

  /** Names of the records, newest first. */
  async #names(): Promise<string[]> {
    try {
      const names = (await readdir(this.#folder)).filter((name) => /^\d+\.json$/.test(name));
      return names.sort((a, b) => Number.parseInt(b, 10) - Number.parseInt(a, 10));
    } catch (error) {
      // No folder yet: nothing was ever kept.
      if (codeOf(error) !== 'ENOENT') this.#troubles.valueOf('recovery', this.#folder, { kind: 'unreadable', error });
      return [];
    }
  }
}
