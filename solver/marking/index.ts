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
export type {
  CrossingTold,
  Datum,
  DrawnVertex,
  Face,
  Hole,
  MarkingLocus,
  MarkingStep,
  StepWarning,
  TwoArcs,
} from './marks.ts';
export { arborOfWheel, namer, namesOf } from './names.ts';
export { type PlateView, platesOf, plateViewOf, seenOutline } from './plateView.ts';
export { type MarkingOptions, type MarkingPlan, markingPlan, markingSteps } from './steps/markingSteps.ts';
export { PLATE_CENTRE, type ResolvedDatum } from './steps/metal.ts';
export { type SharedHole, type TransferPlan, type TransferStep, transferPlan } from './steps/transferPlan.ts';
export { centreZero, cornersOf, cornerZero, drillZero, type Zero } from './zero.ts';
