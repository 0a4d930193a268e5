/** Searches for counts: what is asked, told and answered, and the desk that asks for them. */
import type {
  CountsOptions,
  CountsProgress,
  CountsResult,
  JointOptions,
  JointResult,
} from '../../solver/train/counts/index.ts';
import { WorkDesk } from '../desk/desk.ts';

/** Each kind of search with what it asks, tells on the way and answers. */
export interface CountsWork {
  /** For one indication. */
  one: { asks: CountsOptions; progress: CountsProgress; answer: CountsResult };
  /** For several at once. */
  several: { asks: JointOptions; progress: CountsProgress; answer: JointResult };
}

/** The result of a search, by what was asked. */
export type CountsAnswer =
  | { readonly kind: 'one'; readonly result: CountsResult }
  | { readonly kind: 'several'; readonly result: JointResult };

export const countsDesk = new WorkDesk<CountsWork>(
  () => new Worker(new URL('./countsWorker.ts', import.meta.url), { type: 'module' }),
  'Search again, with narrower limits.',
);
