/**
 * Words: the last room of the solver. Outcomes of the other rooms are kinds, ids and numbers; here they become sentences,
 * for the unit, the decimals and the names of the document.
 *
 * Read `figures.ts` (lengths and angles), `rules.ts` (what rules are called; parts are named in `marking/names.ts`, since
 * lettering needs names, too), `speaker.ts` (all of
 * it for one document); then one file for the outcomes of each room, its kinds closed by a table.
 *
 * @example
 * const speaker = speakerOf(movement);
 * speaker.length(31.27); // "31.270 mm", or "1.2311 in"
 * speaker.rule(ruleId); // "the depth of Third and Escape"
 */

export { namesOf } from '../marking/index.ts';
export { unitOf } from './figures.ts';
export { asSentence, counted, listed } from './lists.ts';
export { measureProblemSays } from './movement/measureWords.ts';
export { refusalSays } from './movement/refusalWords.ts';
export { ruleAsked, ruleHeading, ruleQuoted, ruleSeen } from './rules.ts';
export { type Speaker, speakerOf } from './speaker.ts';
export { CUTTING_CAUTIONS, checkOffLines, cutterSays, cuttingLines, cuttingSheet } from './teeth/cuttingWords.ts';
export { depthLines, type RemarkWords, remarkWords, smallChange, VERDICTS } from './teeth/depthWords.ts';
export { dividingWaySays, nearWaySays, settingSays } from './teeth/dividingWords.ts';
export { FORM_CHOICES } from './teeth/formWords.ts';
export { noOpeningsSay, outlineDoubtSays } from './teeth/outlineWords.ts';
export { mismatchSays, pairDoubtSays, pairFaultSays } from './teeth/pairWords.ts';
export { percentSays, sizeSays } from './teeth/sizeWords.ts';
export { teethSay } from './teeth/toothWords.ts';
