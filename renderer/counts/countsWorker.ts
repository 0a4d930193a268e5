/** The search for counts, off the window's thread: takes a question, tells progress, gives the answer. Ended from outside. */
import {
  type CountsOptions,
  type CountsProgress,
  type CountsResult,
  findCountsSteps,
  findJointCountsSteps,
  type JointOptions,
  type JointResult,
} from '../../solver/train/counts/index.ts';

/** A search for one indication, or for several at once. */
export type Question =
  | { readonly kind: 'one'; readonly options: CountsOptions }
  | { readonly kind: 'several'; readonly options: JointOptions };

/** The result of a search, by what was asked. */
export type Answer =
  | { readonly kind: 'one'; readonly result: CountsResult }
  | { readonly kind: 'several'; readonly result: JointResult };

/** What the worker sends while it searches and when it ends. */
export type CountsMessage =
  | { readonly kind: 'progress'; readonly progress: CountsProgress }
  | { readonly kind: 'answer'; readonly answer: Answer }
  | { readonly kind: 'failed'; readonly says: string };

const scope = self as unknown as DedicatedWorkerGlobalScope; // this file only runs as a worker
const post = (message: CountsMessage): void => scope.postMessage(message);

/** Time between two tellings of progress, ms: what an eye can follow. */
const TELL_EVERY = 80;

function runToEnd<Result>(search: Generator<CountsProgress, Result, void>): Result {
  let told = Number.NEGATIVE_INFINITY;
  for (let step = search.next(); ; step = search.next()) {
    if (step.done) return step.value;
    if (performance.now() - told < TELL_EVERY) continue;
    told = performance.now();
    post({ kind: 'progress', progress: step.value });
  }
}

scope.onmessage = ({ data }: MessageEvent<Question>) => {
  try {
    const answer: Answer =
      data.kind === 'one'
        ? { kind: 'one', result: runToEnd(findCountsSteps(data.options)) }
        : { kind: 'several', result: runToEnd(findJointCountsSteps(data.options)) };
    post({ kind: 'answer', answer });
  } catch (error) {
    post({ kind: 'failed', says: error instanceof Error ? error.message : String(error) });
  }
};
