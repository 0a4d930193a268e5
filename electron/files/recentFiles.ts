/** Files opened or saved before, newest first. The page sees ids and names, never paths. */
import { createHash } from 'node:crypto';
import { basename, dirname } from 'node:path';
import * as z from 'zod/mini';
import type { RecentFile } from '../bridge.ts';
import { readKept, writeKept } from './keptJson.ts';
import type { RecordTroubles } from './recordTroubles.ts';

/** As many as a menu shows without scrolling. */
const MOST = 10;
const record = z.object({ paths: z.array(z.string()).check(z.maxLength(100)) });

/** The list of files opened or saved before, kept between runs. */
export class RecentFiles {
  readonly #file: string;
  readonly #troubles: RecordTroubles;
  #paths: string[] = [];
  /** A newer program's list is not written over. */
  #isOurs = true;

  /** @param file where the list is kept between runs */
  constructor(file: string, troubles: RecordTroubles) {
    this.#file = file;
    this.#troubles = troubles;
  }

  async read(): Promise<void> {
    const reading = await readKept(this.#file, record);
    this.#isOurs = reading.kind !== 'newer';
    this.#paths = this.#troubles.valueOf('recent', this.#file, reading)?.paths.slice(0, MOST) ?? [];
  }

  /** Puts a path first. */
  async add(path: string): Promise<void> {
    this.#paths = [path, ...this.#paths.filter((other) => other !== path)].slice(0, MOST);
    await this.#write();
  }

  /** Takes a path out, when its file turned out to be gone. */
  async remove(path: string): Promise<void> {
    this.#paths = this.#paths.filter((other) => other !== path);
    await this.#write();
  }

  async #write(): Promise<void> {
    if (!this.#isOurs) return;
    await this.#troubles.wrote('recent', this.#file, () => writeKept(this.#file, { paths: this.#paths }));
  }

  /** Folders of the files in the list. */
  folders(): readonly string[] {
    return [...new Set(this.#paths.map((path) => dirname(path)))];
  }

  /** What menus and page show. */
  list(): RecentFile[] {
    return this.#paths.map((path) => ({ id: idOf(path), name: basename(path), folder: basename(dirname(path)) }));
  }

  pathOf(id: string): string | undefined {
    return this.#paths.find((path) => idOf(path) === id);
  }
}

const idOf = (path: string): string => createHash('sha256').update(path).digest('hex').slice(0, 16);
