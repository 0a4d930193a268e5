/** The search for counts, off the window's thread: takes options, tells progress, gives the result. Ended from outside. */
import { type CountsOptions, type CountsProgress, type CountsResult, findCounts } from '../../solver/gearing/index.ts';

export type CountsMessage =
  | { readonly kind: 'progress'; readonly progress: CountsProgress }
  | { readonly kind: 'result'; readonly result: CountsResult }
  | { readonly kind: 'failed'; readonly says: string };

const scope = self as unknown as DedicatedWorkerGlobalScope; // this file only runs as a worker

scope.onmessage = ({ data }: MessageEvent<CountsOptions>) => {
  const post = (message: CountsMessage): void => scope.postMessage(message);
  try {
    const result = findCounts(data, (progress) => {
      post({ kind: 'progress', progress });
      return true;
    });
    if (result.kind !== 'stopped') post({ kind: 'result', result });
  } catch (error) {
    post({ kind: 'failed', says: error instanceof Error ? error.message : String(error) });
  }
};
