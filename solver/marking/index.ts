/**
 * Marking out: the order in which points are struck on the metal, each from points already there.
 *
 * Read `marks.ts` (plain data), `plateView.ts` (one face of one plate), `holes.ts`, `steps/markingSteps.ts`. The face
 * `ways/index.ts` gives the other ways to carry points over: rotary table, readout, pins, edges.
 *
 * @example
 * const steps = markingSteps(plantMovement(movement), { plate: 'base', face: 'up' });
 */
export { holesOf } from './holes.ts';
export type { Datum, DrawnVertex, Face, Hole, MarkingLocus, MarkingStep } from './marks.ts';
export { arborOfWheel, namer, namesOf } from './names.ts';
export { type PlateView, platesOf, plateViewOf, seenOutline } from './plateView.ts';
export { type MarkingPlan, markingPlan, markingSteps } from './steps/markingSteps.ts';
export { stepsText } from './steps/stepsText.ts';
export { checkWords, locusWords, type StepSentence, stepSentences } from './steps/stepWords.ts';
export { transferPlan } from './steps/transferPlan.ts';
export { centreZero, cornersOf, cornerZero, drillZero, type Zero } from './zero.ts';
