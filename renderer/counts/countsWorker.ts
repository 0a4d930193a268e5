/** The search for counts, off the window's thread. */
import { findCountsSteps, findJointCountsSteps } from '../../solver/train/counts/index.ts';
import { type ServingScope, serve, sparingSteps } from '../desk/serve.ts';
import type { CountsWork } from './countsWork.ts';

// This file only runs as a worker.
serve<CountsWork>(self as unknown as ServingScope, {
  one: (options) => sparingSteps(findCountsSteps(options)),
  several: (options) => sparingSteps(findJointCountsSteps(options)),
});
