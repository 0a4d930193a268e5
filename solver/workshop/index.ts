/**
 * The workshop room: from the placed movement to metal.
 *
 * Read `drawing.ts` (plain data), `holes.ts`, `steps/markingSteps.ts` (the order of striking), `draw/plateDrawing.ts`,
 * `write/walk.ts` and the writers, `preflight/preflight.ts`, `sheetsOf.ts`.
 *
 * ```ts
 * const placed = plantMovement(movement);
 * const steps = markingSteps(placed, { plate: 'base', face: 'up' });
 * const dxf = writeDxf(plateDrawing(placed, { plate: 'base', face: 'up', density: 'cut' }));
 * const report = preflight('base.dxf', dxf); // report.problems is empty
 * for (const { name, text } of sheetsOf(placed)) save(name, text);
 * ```
 */
export { extentsOf } from './draw/extents.ts';
export { textWidth } from './draw/lettering.ts';
export { type Labelled, type LabelRoom, placeLabels } from './draw/placeLabels.ts';
export { type PlateDrawingOptions, plateDrawing, seenHoles } from './draw/plateDrawing.ts';
export type {
  Datum,
  Density,
  Drawing,
  DrawnShape,
  DrawnVertex,
  EdgeName,
  Face,
  Hole,
  Layer,
  LayerName,
  MarkingLocus,
  MarkingStep,
} from './drawing.ts';
export { effectSays, errorSays } from './errors/effectSays.ts';
export { type ErrorKind, type StatedErrors, USUAL_ERRORS } from './errors/errorSources.ts';
export { type ErrorsOptions, type ErrorsProgress, errorsFound, findErrors } from './errors/errorsFound.ts';
export type {
  CheckFound,
  DepthFound,
  ErrorEffect,
  ErrorsFound,
  GapFound,
  PlaceFound,
  SourceFound,
} from './errors/found.ts';
export { type Change, changesBetween } from './handover/changes.ts';
export { changesText, type HandoverFile, type HandoverOptions, handoverOf, zipOf } from './handover/handover.ts';
export { holesOf } from './holes.ts';
export { daysOf, movementAsOf } from './made/asOf.ts';
export { type Combined, combineReadings, type Measured } from './made/combine.ts';
export {
  type Consequences,
  consequencesOf,
  type DepthChange,
  depthState,
  movesBetween,
  type PointMove,
} from './made/consequences.ts';
export { type Cure, type CureOptions, curesFor, shiftOf, shiftWords, shimFor } from './made/cure.ts';
export { type DepthReadings, depthReadings, editsOfDepthReadings } from './made/depthReadings.ts';
export { type DistancesTell, distancesTell, editsOfWrongHoles } from './made/distancesTell.ts';
export {
  boreBeforePressing,
  FIT_USES,
  type FitFeel,
  type FitUse,
  feelOf,
  fitOf,
  type HoleClass,
  type ShaftClass,
} from './made/fits.ts';
export { type OffPlace, offPlaces } from './made/offPlaces.ts';
export {
  type CombinedPlace,
  editOfPlace,
  type PlaceReadings,
  placeReadings,
  type TruePlace,
  truePlace,
} from './made/placeReadings.ts';
export { newReamer, type Reamed, reamedHole, warmingToSlip } from './made/reamers.ts';
export { type SizeReadings, sizeReadings, trueSize } from './made/sizeReadings.ts';
export { editOfSize, type PartSize, partSizes, sizeKeyOf } from './made/sizes.ts';
export { type TrueLength, trueLength } from './made/trueLength.ts';
export { findWrongHoles, fitPlaces, type HoleReport, type MeasuredDistance } from './made/wrongHole.ts';
export type { Mark, Page } from './pages/page.ts';
export { pageSvg } from './pages/pageSvg.ts';
export { BAR, type Calibration, PAPERS, type PaperName, type SheetSettings, scalesOf } from './pages/paper.ts';
export { writePdf } from './pages/pdf.ts';
export { type PrintedFile, type PrintedFormat, pdfSheetsOf, printedFilesOf } from './pages/printedFiles.ts';
export { type PrintedSheet, printedSheetsOf } from './pages/printedSheets.ts';
export { type FontBytes, SheetFonts } from './pages/sheetFonts.ts';
export { type PlateView, platesOf, plateViewOf, seenOutline } from './plateView.ts';
export { type Expected, type Preflight, preflight } from './preflight/preflight.ts';
export { drillOptionsOf, type Sheet, sheetsOf } from './sheetsOf.ts';
export { type MarkingOptions, type MarkingPlan, markingPlan, markingSteps } from './steps/markingSteps.ts';
export { stepsText } from './steps/stepsText.ts';
export { type StepSentence, stepSentences } from './steps/stepWords.ts';
export { printedReach, spreadOfSteps } from './steps/strikingErrors.ts';
export { fitsOneWay, type TransferPlan, transferPlan } from './steps/transferPlan.ts';
export { buttonList, chordList, distanceTable, overPins } from './ways/betweenHoles.ts';
export { edgeOffsets } from './ways/edgeOffsets.ts';
export { positivePreset, positiveZero, readoutList } from './ways/readout.ts';
export { type RotaryOptions, readsHighAt, rotaryList, type TableError } from './ways/rotaryTable.ts';
export { wheelDrawing } from './wheel/wheelDrawing.ts';
export { wheelFiles } from './wheel/wheelFiles.ts';
export { fixed, type LengthDisplay, lengthText, trimmed } from './write/decimal.ts';
export { writeDrill } from './write/drill.ts';
export { type DrillPass, passesOf } from './write/drillPasses.ts';
export type { DrillOptions } from './write/drillWords.ts';
export { type DxfOptions, writeDxf } from './write/dxf.ts';
export { writeHoleTable } from './write/holeTable.ts';
export { writeSvg } from './write/svg.ts';
export { type DrawingSink, walkDrawing } from './write/walk.ts';
export { type Corner, centreZero, cornersOf, cornerZero, drillZero, pointZero, type Zero } from './zero.ts';
