/**
 * Words of the shop: what marking out, readings, cures, fits, trials of errors and the files of a job say.
 *
 * Read `sizeWords.ts` and `shiftWords.ts` (what is measured, and which way), then a file for each outcome.
 *
 * @example
 * const says = cures.map((cure) => cureSays(cure, speakerOf(movement)));
 */
export { changesBesideDepths, changesSay, RUNS } from './changeWords.ts';
export { holeCureSays } from './cureWords.ts';
export { doingSays, effectSays, errorSays, gapName, mostlySays, sourceName } from './errorWords.ts';
export { FEELS, fitSays, playBetween, pressedSays, reamedSays, useSays, warmingSays } from './fitWords.ts';
export { holesDisagree, holesSay, leftOverSays, offPlaceSays, roomSays } from './holeWords.ts';
export { pairSays } from './pairWords.ts';
export { doubtOfRow, doubtSays, outlierOfRow, outlierSays } from './readingWords.ts';
export { revisionSays } from './revisionWords.ts';
export { sheetWordsOf } from './sheetWords.ts';
export { clockSays, shiftSays } from './shiftWords.ts';
export { partSizeSays, sizeOf } from './sizeWords.ts';
export { stepsText } from './stepsText.ts';
export { datumSays, type StepSentence, stepLines, stepSentences } from './stepWords.ts';
export { transferSays } from './transferWords.ts';
