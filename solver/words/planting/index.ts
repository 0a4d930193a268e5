/**
 * Words for the planting: its state in a heading and a few sentences, and the rules that cannot hold together.
 *
 * `disagreementWords.ts` has a sentence for each way in which rules fail; `plantingWords.ts` sums the planting up.
 */
export { contestedSays } from './contestedWords.ts';
export { crossingCureSays } from './crossingWords.ts';
export { disagreementSays } from './disagreementWords.ts';
export { dutySays } from './dutyWords.ts';
export { plantingDetail, plantingHeadline, plantingSays } from './plantingWords.ts';
