/**
 * Long work, one way to write it. A long function is a generator named `…Steps`: each step tells how far it is, and what
 * it returns is the answer. Its sister without `Steps` runs it to the end. Whoever watches takes the steps himself: a
 * worker that tells progress, a command line that may stop.
 */

/** Work in steps: tells `Progress` at each, gives `Result` at the end. Dropped before its end it leaves nothing behind. */
export type Steps<Progress, Result> = Generator<Progress, Result, void>;

/** Runs work to its end. */
export function runSteps<Result>(steps: Steps<unknown, Result>): Result {
  for (;;) {
    const step = steps.next();
    if (step.done) return step.value;
  }
}

/** Runs work while `told` does not answer false, which stops it. */
export function watchSteps<Progress, Result>(
  steps: Steps<Progress, Result>,
  told: (progress: Progress) => boolean | undefined,
): Result | { readonly kind: 'stopped' } {
  for (;;) {
    const step = steps.next();
    if (step.done) return step.value;
    if (told(step.value) === false) return { kind: 'stopped' };
  }
}
