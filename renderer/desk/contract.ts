/**
 * The one contract for work off the window's thread: what is asked, what is told on the way, the answer, and what
 * failed. A desk asks (`desk.ts`), a worker serves (`serve.ts`); neither knows what the work is about.
 */
import type { Movement } from '../../solver/movement/schema.ts';

/** One kind of work: all three are plain data that can be sent to a worker. */
export interface Work {
  readonly asks: unknown;
  readonly progress: unknown;
  readonly answer: unknown;
}

/** The kinds of work of one worker, by name. */
export type Works<Kinds> = { readonly [Name in keyof Kinds]: Work };

/** A question on its way to the worker. */
export interface Asked {
  readonly ticket: number;
  readonly name: PropertyKey;
  readonly asks: unknown;
  /** The movement that it is about, by the desk's own number; the movement itself comes with its first question only. */
  readonly about?: { readonly number: number; readonly movement?: Movement } | undefined;
}

/** What the worker sends back: any number of tellings, then an answer or what failed. */
export type DeskTold = { readonly ticket: number } & (
  | { readonly kind: 'progress'; readonly progress: unknown }
  | { readonly kind: 'answer'; readonly answer: unknown }
  | { readonly kind: 'failed'; readonly says: string }
);

/** Who is told what comes of a question. One of `answer` and `failed` is called, once, unless the question is cancelled. */
export interface Listener<Kind extends Work> {
  readonly progress?: (progress: Kind['progress']) => void;
  readonly answer: (answer: Kind['answer']) => void;
  readonly failed: (says: string) => void;
}
