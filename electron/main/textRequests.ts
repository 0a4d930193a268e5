/** Asking the page for its present text, and waiting for the answer with the same ticket. */
import type { DocumentText, RequestOf } from '../bridge.ts';

/** Longest wait, ms: a page that does not answer by then hangs. */
const PATIENCE_MS = 5_000;

/** Questions to the page that wait for their answer. */
export class TextRequests {
  readonly #waiting = new Map<number, (text: DocumentText | undefined) => void>();
  readonly #ask: (ticket: number) => void;
  #next = 1;

  /** @param ask sends the question to the page */
  constructor(ask: (ticket: number) => void) {
    this.#ask = ask;
  }

  /** The page's present text; undefined when it has none or does not answer in time. */
  present(): Promise<DocumentText | undefined> {
    const ticket = this.#next++;
    return new Promise((done) => {
      const timer = setTimeout(() => this.answered({ ticket }), PATIENCE_MS);
      this.#waiting.set(ticket, (text) => {
        clearTimeout(timer);
        done(text);
      });
      this.#ask(ticket);
    });
  }

  /** The page's answer; one that nobody waits for any more is ignored. */
  answered({ ticket, text }: RequestOf<'giveText'>): void {
    this.#waiting.get(ticket)?.(text);
    this.#waiting.delete(ticket);
  }
}
