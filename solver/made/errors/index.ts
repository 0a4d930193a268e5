/** Before cutting: what each error of making does to depths and gaps, alone and all at once. Start with `errorsFound.ts`. */
export { type ErrorOf, type StatedErrors, USUAL_ERRORS } from './errorSources.ts';
export {
  type ErrorsDoing,
  type ErrorsOptions,
  type ErrorsProgress,
  findErrors,
  findErrorsSteps,
} from './errorsFound.ts';
export type { ErrorEffect, ErrorPartOf, ErrorsFound, SourceFound } from './found.ts';
