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
export { applyEdit } from './edits/applyEdit.ts';
export type * from './edits/edit.ts';
export { freshId } from './edits/freshId.ts';
export { emptyMovement } from './emptyMovement.ts';
export {
  commit,
  type Deed,
  type History,
  redo,
  type Selection,
  type Step,
  startHistory,
  type Transaction,
  undo,
} from './history/history.ts';
export type * from './ids.ts';
export {
  fixed,
  type LengthUnit,
  lengthText,
  lengthWithUnit,
  MM_PER_INCH,
  type ParsedAngle,
  type ParsedLength,
  parseAngle,
  parseLength,
} from './measures.ts';
export { MAX_ARBORS, MAX_LENGTH, MAX_TEETH, MIN_LENGTH, MIN_TEETH } from './quantities.ts';
export type { Problem } from './read/problem.ts';
export { type MovementReading, readMovement } from './read/readMovement.ts';
export { COLLECTIONS, type Collection } from './references/collections.ts';
export { idsOf } from './references/idsOf.ts';
export type * from './schema.ts';
export { BODY_KINDS, FORMAT, VERSION } from './schema.ts';
export { writeMovement } from './write/writeMovement.ts';
