/** Starts a search for counts in a worker of its own; the result of calling is what stops it. */
import type { CountsOptions, CountsProgress, CountsResult } from '../../solver/gearing/index.ts';
import type { CountsMessage } from './countsWorker.ts';

export interface SearchListener {
  readonly progress: (progress: CountsProgress) => void;
  readonly result: (result: CountsResult) => void;
  readonly failed: (says: string) => void;
}

export function startSearch(options: CountsOptions, listener: SearchListener): () => void {
  const worker = new Worker(new URL('./countsWorker.ts', import.meta.url), { type: 'module' });
  worker.onmessage = ({ data }: MessageEvent<CountsMessage>) => {
    if (data.kind === 'progress') listener.progress(data.progress);
    else {
      worker.terminate();
      if (data.kind === 'result') listener.result(data.result);
      else listener.failed(data.says);
    }
  };
  worker.onerror = (event) => {
    worker.terminate();
    listener.failed(`The search broke off: ${event.message}. Search again, with narrower limits.`);
  };
  worker.postMessage(options);
  return () => worker.terminate();
}
