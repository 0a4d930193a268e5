/** Keeps unsaved work on a timer, and offers what an earlier run left. */
import type { DocumentText, PageState, Start } from '../bridge.ts';
import type { Recovery } from '../files/recovery.ts';
import { type Documents, nameOf, UNTITLED } from './documents.ts';

/** Time between two keepings, ms: a crash costs at most this much work. */
export const KEEP_EVERY_MS = 10_000;

export type Offer = NonNullable<Start['recovery']>;

export class Safekeeping {
  readonly #recovery: Recovery;
  #offered: { readonly handle: string; readonly record: string } | undefined;
  #keptText: string | undefined;
  #unsaved = false;

  constructor(recovery: Recovery) {
    this.#recovery = recovery;
  }

  /** The work that an earlier run (or this one, before its page crashed) left, as a document to open. */
  async offer(documents: Documents): Promise<Offer | undefined> {
    const left = await this.#recovery.newest();
    if (!left) return undefined;
    const { work, record } = left;
    const file = work.path === undefined ? undefined : { path: work.path, ...(work.digest && { digest: work.digest }) };
    const { handle } = documents.add(file);
    this.#offered = { handle, record };
    return { document: { handle, name: work.name, text: work.text, unsaved: true }, keptAtMs: work.keptAtMs };
  }

  /** The page's state: adopting the offered work makes its record ours; saved work needs none. */
  async adopt(state: PageState): Promise<void> {
    if (this.#offered?.handle === state.handle) {
      this.#recovery.goOnWith(this.#offered.record);
      this.#offered = undefined;
    }
    const wasUnsaved = this.#unsaved;
    this.#unsaved = state.unsaved;
    if (wasUnsaved && !state.unsaved) await this.letGo();
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

  /** The maker does not want the offered work. */
  async dropOffered(): Promise<void> {
    const record = this.#offered?.record;
    this.#offered = undefined;
    if (record !== undefined) await this.#recovery.drop(record);
  }
}
