/**
 * Words of teeth and train: what a wheel, a pair, a depth, a cutter or a division has to say; how the train turns, what
 * counts make a ratio, what drives it.
 *
 * Each file of `../teeth/` and `../train/` takes one outcome of its room and closes its kinds by a table.
 */
export { CUTTING_CAUTIONS, checkOffLines, cutterSays, cuttingLines, cuttingSheet } from '../teeth/cuttingWords.ts';
export { depthLines, type RemarkWords, remarkWords, smallChange, VERDICTS } from '../teeth/depthWords.ts';
export { dividingWaySays, nearWaySays, settingSays } from '../teeth/dividingWords.ts';
export { noOpeningsSay, outlineDoubtSays } from '../teeth/outlineWords.ts';
export { mismatchSays, pairDoubtSays, pairFaultSays } from '../teeth/pairWords.ts';
export { percentSays, sizeSays } from '../teeth/sizeWords.ts';
export { teethSay } from '../teeth/toothWords.ts';
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
