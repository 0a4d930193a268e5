/** Keeps unsaved work on a timer, and finds what an earlier run left. */
import type { DocumentText, OpenedDocument, PageState } from '../bridge.ts';
import type { KeptWork, Recovery } from '../files/recovery.ts';
import { type Documents, nameOf, UNTITLED } from './documents.ts';

/** Longest wait from a change to its keeping, ms: with the writing itself a crash costs at most a second of work. */
export const KEEP_WITHIN_MS = 500;

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
  /** Number of the page's last change that was asked for. */
  #seen: number | undefined;
  #present: number | undefined;

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
    this.#present = state.change;
    if (wasUnsaved && !state.unsaved) await this.letGo();
  }

  /** The page is gone with its work: what was kept of it stays, to be taken up. */
  pageGone(): void {
    this.#unsaved = false;
    this.#keptText = undefined;
    this.#seen = undefined;
  }

  /** Keeps the present text, when it is unsaved and differs from what is kept. A failure is told and tried again. */
  async keep(ask: () => Promise<DocumentText | undefined>, documents: Documents, nowMs: number): Promise<void> {
    if (!this.isNeeded) return;
    const asked = this.#present;
    const present = await ask();
    if (!this.#unsaved || !present || present.text === this.#keptText) return;
    const document = documents.of(present.handle);
    const { path, digest } = document;
    const name = path === undefined ? UNTITLED : nameOf(document);
    const isKept = await this.#recovery.keep({
      name,
      text: present.text,
      keptAtMs: nowMs,
      ...(path && { path }),
      ...(digest && { digest }),
    });
    if (!isKept) return;
    this.#keptText = present.text;
    this.#seen = asked;
  }

  /** Whether there are unsaved changes that are not kept yet. */
  get isNeeded(): boolean {
    return this.#unsaved && this.#present !== this.#seen;
  }

  /** The present work is saved, or let go by the maker: its record goes. */
  async letGo(): Promise<void> {
    this.#keptText = undefined;
    this.#seen = undefined;
    await this.#recovery.drop();
  }
}
