/** Before cutting: what each error of making does to depths and gaps, alone and all at once. Start with `errorsFound.ts`. */
export { effectSays, errorSays } from './effectSays.ts';
export { type StatedErrors, USUAL_ERRORS } from './errorSources.ts';
export { type ErrorsOptions, type ErrorsProgress, errorsFound, findErrors } from './errorsFound.ts';
export type { ErrorsFound } from './found.ts';
