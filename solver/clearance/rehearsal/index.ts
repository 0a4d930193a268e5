/** Rehearsal: does the train run when it is turned? Start with `rehearse.ts`. */
export type { LeftOut, NoRehearsal } from './rehearsalTrain.ts';
export { type RehearsalOptions, type RehearsalReport, rehearse, rehearseSteps } from './rehearse.ts';
