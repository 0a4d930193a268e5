/**
 * The movement document: what a file holds, how it is read, checked, changed and written.
 *
 * Read in this order: `schema.ts` with the files it joins, `read/readMovement.ts`, `checks/documentFaults.ts`,
 * `write/writeMovement.ts`, `edits/edit.ts` with `applyEdit.ts`, `history/history.ts`.
 *
 * @example
 * const reading = readMovement(text);
 * if (reading.kind === 'problems') for (const problem of reading.problems) report(problem.says);
 * else plantMovement(reading.movement);
 */

export { centreLineOf } from './centreLine.ts';
export { type DrilledAxis, drilledAxis } from './drilledAxis.ts';
export { drilling } from './drilling.ts';
export { applyEdit } from './edits/applyEdit.ts';
export type { Edit, ItemInput, Parts, Refused } from './edits/edit.ts';
export { freshId } from './edits/freshId.ts';
export type { EditRefusal } from './edits/refusal.ts';
export { emptyMovement } from './emptyMovement.ts';
export { commit, type History, redo, type Step, startHistory, type Transaction, undo } from './history/history.ts';
export { MAX_LENGTH, MAX_TEETH, MIN_LENGTH } from './quantities.ts';
export type { Problem } from './read/problem.ts';
export { readMovement } from './read/readMovement.ts';
export { encodingChoices, type OldEncoding, textOfBytes } from './read/textOfBytes.ts';
export { COLLECTIONS, type Collection } from './references/collections.ts';
export { idsOf } from './references/idsOf.ts';
export { pointCalled } from './references/pointCalled.ts';
export { pointsOfRule } from './references/pointsOfRule.ts';
export {
  joinedByRule,
  numberOfRule,
  stemOfRule,
  subjectOfRule,
  withRuleNumber,
} from './ruleKinds/ruleKinds.ts';
export { shownLines, shownText } from './shownText.ts';
export { writeMovement } from './write/writeMovement.ts';
