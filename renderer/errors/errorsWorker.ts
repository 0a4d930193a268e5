/** Trials of errors, off the window's thread. */
import { findErrorsSteps } from '../../solver/made/errors/index.ts';
import { type ServingScope, serve, sparingSteps } from '../desk/serve.ts';
import type { ErrorsWork } from './errorsWork.ts';

// This file only runs as a worker.
serve<ErrorsWork>(self as unknown as ServingScope, {
  findErrors: (options, placed) => sparingSteps(findErrorsSteps(placed(), options)),
});
