/**
 * Words of the train: how it turns, what counts make a ratio, what drives it.
 *
 * Each file takes one outcome of its room and closes its kinds by a table. The words of teeth are in the room's face.
 */
export {
  countsProblemSays,
  countsSay,
  noJointCountsSay,
  noPeriodSays,
  rowErrorSays,
  searchingCountsSay,
  verifiedSays,
} from './countsWords.ts';
export {
  inputProblemSays,
  palletsSay,
  pendulumSays,
  SPRING_CAUTIONS,
  springSays,
  torqueIn,
  torqueSays,
  torquesSay,
  torqueUnit,
  WEIGHT_CAUTIONS,
  weightSays,
} from './driveWords.ts';
export { indicationSays, shownErrorSays } from './indicationWords.ts';
export { periodErrorSays, periodSays, roundSays } from './periodWords.ts';
export { dialSays, lostMotionSays, recurrenceSays, toothMarkSays } from './runningWords.ts';
export {
  lockedRingSays,
  sharedAxesSay,
  TURNING_STATES,
  turningFaultWords,
  turningProblemSays,
} from './turningWords.ts';
