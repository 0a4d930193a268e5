/**
 * Gearing: sizes, tooth forms, contact of a pair, turning of the train, counts, drive. The room's face for outsiders.
 */

// Teeth and contact: start with teeth/toothForm.ts, then contact/driveOfTooth.ts.
export type { ContactCurves, ContactOptions, NoContact, PairContact } from './contact/contact.ts';
export { type ContactOfPair, contactOfPair } from './contact/contactOfPair.ts';
export { type DepthWindow, sideShakeOf, type WindowOptions, windowOfDepth } from './contact/windowOfDepth.ts';
// Counts: start with counts/counts.ts (what a search takes and gives), then counts/searchCounts.ts.
export {
  type AstronomyConstant,
  CONSTANTS,
  constantsWith,
  digitsOfConstant,
  secondsOfConstant,
} from './counts/constants.ts';
export { type ContinuedFraction, continuedFraction } from './counts/continuedFraction.ts';
export type {
  CountsOptions,
  CountsProblem,
  CountsProgress,
  CountsResult,
  CountsRow,
  Stage,
  TeethRange,
  Train,
} from './counts/counts.ts';
// What the command line prints of counts and turning.
export { type CountsReport, type CountsRequest, countsReport, trainText } from './counts/countsReport.ts';
export {
  findJointCounts,
  type JointOptions,
  type JointResult,
  type JointRow,
  searchJointCounts,
} from './counts/jointCounts.ts';
export { editOfTrain, editOfTrains, type LayOut, type TrainEdit } from './counts/movementFromCounts.ts';
export { type PeriodRatio, ratioOfPeriods, readPeriod } from './counts/ratioOfPeriods.ts';
export { findCounts, searchCounts } from './counts/searchCounts.ts';
export { readTrain, type Verified, verifyTrain } from './counts/verifyTrain.ts';
// Cutting and dividing: start with cutting/dividing.ts, then reports/cuttingReport.ts.
export { type CheckOffLine, checkOffList } from './cutting/checkOffList.ts';
export { type CutterChoice, INVOLUTE_CUTTERS, involuteCutter } from './cutting/cutters.ts';
export { exactWays } from './cutting/divideExactly.ts';
export { nearWays } from './cutting/divideNearly.ts';
export { type DividingHead, type DividingKit, type DividingWay, type NearWay, USUAL_KIT } from './cutting/dividing.ts';
export { type SettingResult, settingGives } from './cutting/settingGives.ts';
// Drive: power, torque, pendulum, pallets, lost motion, what recurs, what the dials read.
export { SPRING_CAUTIONS, STANDARD_GRAVITY, WEIGHT_CAUTIONS } from './drive/cautions.ts';
export { type PalletPlace, palletPlace } from './drive/escapement.ts';
export { type LostMotion, lostMotionOf } from './drive/lostMotion.ts';
export { beatsOfEscape, beatsOfLength, type Pendulum, type PendulumOptions, pendulumFor } from './drive/pendulum.ts';
export { type DialReading, readingsAfterSeconds, readingsAfterTurns } from './drive/readings.ts';
export { type Recurrence, recurrencesOf, suspectsAt } from './drive/recurrence.ts';
export { type SpringDrive, type SpringDriveOptions, springDrive } from './drive/springDrive.ts';
export { type ArborTorque, type LossOptions, type TorqueReport, torquesOf } from './drive/torque.ts';
export { type WeightDrive, type WeightDriveOptions, weightDrive } from './drive/weightDrive.ts';
// Outlines of whole wheels, crossing out, and the reports for screen and command line.
export { type Arms, type CrossingOut, crossingOut } from './outlines/crossingOut.ts';
export { leastRim, statedArms, usualArms } from './outlines/usualArms.ts';
export { type OutlineOptions, type WheelLoop, type WheelOutline, wheelOutline } from './outlines/wheelOutline.ts';
export {
  type CuttingData,
  type CuttingOptions,
  type CuttingReport,
  cuttingDataOf,
  cuttingReport,
  textOfCheckOff,
  textOfCutting,
} from './reports/cuttingReport.ts';
export {
  type DepthEntry,
  type DepthReport,
  type DepthReportOptions,
  depthReport,
  textOfDepth,
} from './reports/depthReport.ts';
export type { DepthVerdict, DepthWord } from './reports/depthWords.ts';
// Sizes: the circles of a wheel and the calculated distance of a pair.
export { calculatedDepth } from './sizes/calculatedDepth.ts';
export { moduleOf, sizeWords } from './sizes/moduleOf.ts';
export { isPinion, type Partner, partnersOf } from './sizes/partners.ts';
export { sizeOfWheel } from './sizes/sizeOfWheel.ts';
// True forms of teeth: one tooth in polar coordinates.
export { formOfWheel } from './teeth/formOfWheel.ts';
export { halfAngleAt, type NoTeeth, type ToothForm } from './teeth/toothForm.ts';
// Rings and phases: turning/meshes.ts says when two wheels mesh, the others follow from it. Places come from planting.
export { closeRing, type Mover, type RingCure } from './turning/closeRing.ts';
export { keepDepths } from './turning/keepDepths.ts';
export { type Mesh, meshesOf, type Places } from './turning/meshes.ts';
export { type PlanetSpacing, planetSpacing } from './turning/planets.ts';
// Turning: start with turning/turning.ts (what it gives), then turning/turnMovement.ts.
export {
  add,
  compare,
  digitsOf,
  divide,
  exactly,
  fractionText,
  magnitude,
  multiply,
  type Rational,
  rational,
  subtract,
  toNumber,
} from './turning/rational.ts';
export { checkRing, checkRings, type MeshRing, meshRings, type RingClosure } from './turning/ringClosure.ts';
export { type AnglesDeg, rollingPhases } from './turning/rollingPhases.ts';
export { type ToothMark, type ToothPhases, toothPhases } from './turning/toothPhases.ts';
export { type ErrorInWords, errorInWords, periodText, roundText, secondsOf } from './turning/tradeWords.ts';
export type {
  ArborTurning,
  IndicationTurning,
  Link,
  LockedRing,
  Rate,
  Sense,
  SharedAxes,
  Turning,
  TurningProblem,
  TurningState,
} from './turning/turning.ts';
export { turnMovement } from './turning/turnMovement.ts';
export { type TurnsReport, turnsReport } from './turning/turnsReport.ts';
export type { CalculatedDepth, WheelSize } from './wheelSize.ts';
