/** Trials of errors of making: what is asked, told and answered, and the desk that asks for them. */
import type { ErrorsFound, ErrorsOptions, ErrorsProgress } from '../../solver/made/errors/index.ts';
import { WorkDesk } from '../desk/desk.ts';

/** The one question with what it asks, tells on the way and answers. */
export interface ErrorsWork {
  findErrors: { asks: ErrorsOptions; progress: ErrorsProgress; answer: ErrorsFound };
}

export const errorsDesk = new WorkDesk<ErrorsWork>(
  () => new Worker(new URL('./errorsWorker.ts', import.meta.url), { type: 'module' }),
  'Try again, with fewer trials.',
);
