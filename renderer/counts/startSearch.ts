/** Starts a search for counts in a worker of its own; the result of calling is what stops it. */
import type { CountsProgress } from '../../solver/train/counts/index.ts';
import type { Answer, CountsMessage, Question } from './countsWorker.ts';

/** Who is told what a search finds. */
export interface SearchListener {
  readonly progress: (progress: CountsProgress) => void;
  readonly answer: (answer: Answer) => void;
  readonly failed: (says: string) => void;
}

/** Starts the worker and listens to it; the function that is returned stops it. */
export function startSearch(question: Question, listener: SearchListener): () => void {
  const worker = new Worker(new URL('./countsWorker.ts', import.meta.url), { type: 'module' });
  worker.onmessage = ({ data }: MessageEvent<CountsMessage>) => {
    if (data.kind === 'progress') listener.progress(data.progress);
    else {
      worker.terminate();
      if (data.kind === 'answer') listener.answer(data.answer);
      else listener.failed(data.says);
    }
  };
  worker.onerror = (event) => {
    worker.terminate();
    listener.failed(`The search broke off: ${event.message}. Search again, with narrower limits.`);
  };
  worker.postMessage(question);
  return () => worker.terminate();
}
