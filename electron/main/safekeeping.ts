/** Keeps unsaved work on a timer, and finds what an earlier run left. */
import type { DocumentText, OpenedDocument, PageState } from '../bridge.ts';
import type { KeptWork, Recovery } from '../files/recovery.ts';
import { type Documents, nameOf, UNTITLED } from './documents.ts';

/** Time between two keepings, ms: a crash costs at most this much work. */
export const KEEP_EVERY_MS = 10_000;

/** Work that an earlier run, or this run's crashed page, left behind. */
export interface LeftWork {
  readonly record: string;
  readonly work: KeptWork;
}

/** Decides when unsaved work is kept and when the record of it goes. */
export class Safekeeping {
  readonly #recovery: Recovery;
  #keptText: string | undefined;
  #unsaved = false;

  constructor(recovery: Recovery) {
    this.#recovery = recovery;
  }

  /** The newest work left behind. */
  left(): Promise<LeftWork | undefined> {
    return this.#recovery.newest();
  }

  /** Opens left work; its record becomes this run's own, until the work is saved or let go. */
  takeUp({ record, work }: LeftWork, documents: Documents): OpenedDocument {
    const file = work.path === undefined ? undefined : { path: work.path, ...(work.digest && { digest: work.digest }) };
    this.#recovery.goOnWith(record);
    return { handle: documents.add(file).handle, name: work.name, text: work.text, unsaved: true };
  }

  /** Throws left work away. */
  throwAway({ record }: LeftWork): Promise<void> {
    return this.#recovery.drop(record);
  }

  /** Notes the page's state; work that is saved now needs no record. */
  async note(state: PageState): Promise<void> {
    const wasUnsaved = this.#unsaved;
    this.#unsaved = state.unsaved;
    if (wasUnsaved && !state.unsaved) await this.letGo();
  }

  /** The page is gone with its work: what was kept of it stays, to be taken up. */
  pageGone(): void {
    this.#unsaved = false;
    this.#keptText = undefined;
  }

  /** Keeps the present text, when it is unsaved and differs from what is kept. */
  async keep(present: DocumentText | undefined, documents: Documents, nowMs: number): Promise<void> {
    if (!this.#unsaved || !present || present.text === this.#keptText) return;
    const document = documents.of(present.handle);
    const { path, digest } = document;
    const name = path === undefined ? UNTITLED : nameOf(document);
    await this.#recovery.keep({
      name,
      text: present.text,
      keptAtMs: nowMs,
      ...(path && { path }),
      ...(digest && { digest }),
    });
    this.#keptText = present.text;
  }

  get isNeeded(): boolean {
    return this.#unsaved;
  }

  /** The present work is saved, or let go by the maker: its record goes. */
  async letGo(): Promise<void> {
    this.#keptText = undefined;
    await this.#recovery.drop();
  }
}
