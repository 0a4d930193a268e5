/**
 * Files: drawings as plain data, and the writers and readers of everything that leaves the program.
 *
 * Read `drawing.ts` (plain data), `draw/plateDrawing.ts`, `write/walk.ts` and the writers, `preflight/preflight.ts`,
 * `sheetsOf.ts`, `handover/handover.ts`. The face `pages/index.ts` gives printed sheets.
 *
 * @example
 * for (const { name, text } of sheetsOf(plantMovement(movement), sheetWordsOf(movement))) save(name, text);
 */
export { type Labelled, type LabelRoom, placeLabels } from './draw/placeLabels.ts';
export { seenHoles } from './draw/plateDrawing.ts';
export { FORMATS, formatOf } from './formats/formats.ts';
export { type Change, type ChangeOf, changesBetween } from './handover/changes.ts';
export { handoverOf, zipOf } from './handover/handover.ts';
export { preflight } from './preflight/preflight.ts';
export { titleOfSheet } from './sheetKinds.ts';
export { type Sheet, sheetsOf } from './sheetsOf.ts';
export type { SheetSpeech, SheetWords } from './sheetWords.ts';
export { wheelFiles } from './wheel/wheelFiles.ts';
