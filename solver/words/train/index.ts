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
export { sizeSays } from '../teeth/sizeWords.ts';
export { teethSay } from '../teeth/toothWords.ts';
