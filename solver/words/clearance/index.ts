/**
 * Words for what clearance finds: findings and their cures, what to try where there is none, stacks and the order of
 * taking apart, trials of the train, plantings that were searched for.
 *
 * `pieces.ts` names pieces of parts for all of them; then one file for each outcome.
 */
export { adviceSays } from './adviceWords.ts';
export { assemblySays, contactSays, MID_SHAKE, noStackSays, piecesWords } from './assemblyWords.ts';
export { buildableList, buildableSays } from './buildWords.ts';
export { cureSays } from './cureWords.ts';
export { findingChangesSay, findingSays } from './findingWords.ts';
export { foundPlantingSays, noPlantingSays, noSafePlaceSays, plantingsSay, searchingSays } from './plantingsWords.ts';
export { leftOutSays, noRehearsalSays, rehearsalSays } from './rehearsalWords.ts';
export { shakeSays, verdictCureSays, verdictSays } from './verdictWords.ts';
