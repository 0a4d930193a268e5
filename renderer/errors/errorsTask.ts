/** Asks the worker what errors of making do, and hears how far it is; calling the result stops it. */

import type { ErrorsFound, ErrorsOptions, ErrorsProgress } from '../../solver/made/errors/index.ts';
import type { Movement } from '../../solver/movement/schema.ts';

/** What the worker is asked. */
export interface ErrorsTask {
  readonly movement: Movement;
  readonly options: ErrorsOptions;
}

/** What the worker sends while it works and when it ends. */
export type ErrorsMessage =
  | { readonly kind: 'progress'; readonly progress: ErrorsProgress }
  | { readonly kind: 'found'; readonly found: ErrorsFound }
  | { readonly kind: 'failed'; readonly says: string };

/** Starts the worker and listens to it; the function that is returned stops it. */
export function startErrors(task: ErrorsTask, listen: (message: ErrorsMessage) => void): () => void {
  const worker = new Worker(new URL('./errorsWorker.ts', import.meta.url), { type: 'module' });
  worker.onmessage = ({ data }: MessageEvent<ErrorsMessage>) => {
    if (data.kind !== 'progress') worker.terminate();
    listen(data);
  };
  worker.onerror = (event) => {
    worker.terminate();
    listen({ kind: 'failed', says: `The trials broke off: ${event.message}. Try again, with fewer trials.` });
  };
  worker.postMessage(task);
  return () => worker.terminate();
}
