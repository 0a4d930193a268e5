/** Counts: tooth numbers for a wanted ratio. Start with `counts.ts` (what a search takes and gives), then `searchCounts.ts`. */
export {
  type AstronomyConstant,
  CONSTANTS,
  constantNamed,
  constantsWith,
  digitsOfConstant,
  termOf,
} from './constants.ts';
export type {
  CountedTrain,
  CountsFault,
  CountsOptions,
  CountsProblem,
  CountsProgress,
  CountsResult,
  CountsRow,
  NoCounts,
  Stage,
} from './counts.ts';
export {
  findJointCounts,
  findJointCountsSteps,
  type JointOptions,
  type JointResult,
  type JointRow,
} from './jointCounts.ts';
export { editOfTrains, type LayOut, type TrainEdit } from './movementFromCounts.ts';
export { type PeriodRatio, ratioOfPeriods, readPeriod } from './ratioOfPeriods.ts';
export { findCounts, findCountsSteps } from './searchCounts.ts';
export { trainText } from './trainText.ts';
export { type Verified, verifyTrain } from './verifyTrain.ts';
