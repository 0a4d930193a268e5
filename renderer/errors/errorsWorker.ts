/** Trials of errors, off the window's thread: tells progress, gives what was found. Ended from outside. */

import { findErrorsSteps } from '../../solver/made/errors/index.ts';
import { plantMovement } from '../../solver/planting/index.ts';
import type { ErrorsMessage, ErrorsTask } from './errorsTask.ts';

const scope = self as unknown as DedicatedWorkerGlobalScope; // this file only runs as a worker
const post = (message: ErrorsMessage): void => scope.postMessage(message);

/** Time between two tellings of progress, ms: what an eye can follow. */
const TELL_EVERY = 80;

scope.onmessage = ({ data }: MessageEvent<ErrorsTask>) => {
  try {
    const search = findErrorsSteps(plantMovement(data.movement), data.options);
    let told = Number.NEGATIVE_INFINITY;
    for (let next = search.next(); ; next = search.next()) {
      if (next.done) {
        post({ kind: 'found', found: next.value });
        return;
      }
      if (performance.now() - told < TELL_EVERY) continue;
      told = performance.now();
      post({ kind: 'progress', progress: next.value });
    }
  } catch (error) {
    post({ kind: 'failed', says: error instanceof Error ? error.message : String(error) });
  }
};
