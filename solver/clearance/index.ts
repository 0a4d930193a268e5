/**
 * Clearance: what fouls what, and by how much.
 *
 * Read in this order: `finding.ts` (what a check gives), `solid.ts` and `solids.ts` (what can touch), `planGap.ts` (how near two
 * solids come in plan), `pairTerms.ts` (what a pair owes), `gapFinding.ts`, `gapChecker.ts`, `checkMovement.ts`.
 *
 * ```ts
 * const placed = plantMovement(movement);
 * for (const finding of checkMovement(placed)) console.log(finding.says);
 * ```
 */
export { type AssemblyOrder, assemblyOrder, type HeldDown } from './assemblyOrder.ts';
export { checkDepthsUnderShake, type DepthUnderShake, depthsUnderShake } from './checkDepthsUnderShake.ts';
export { type CheckOptions, checkMovement, createChecker, type MovementChecker } from './checkMovement.ts';
export type { Finding, Remedy } from './finding.ts';
export {
  type FindPlantingOptions,
  type FindPlantingProgress,
  type FoundPlantings,
  findPlanting,
  type PlantingAnswer,
  plantingsFound,
} from './findPlanting/findPlanting.ts';
export { gapBetween, type PartGap } from './gapBetween.ts';
export { type GapNow, gapNow, type NearGap, nearGapsOf } from './nearGaps.ts';
export type { PipeStack, PipeStop } from './pipeStack.ts';
export { type PlanGap, planGapOf } from './planGap.ts';
export {
  type Rehearsal,
  type RehearsalOptions,
  type RehearsalProgress,
  type RehearsalReport,
  rehearsalOf,
  rehearse,
} from './rehearsal/rehearse.ts';
export { adviceFor } from './remedies/advice.ts';
export { safeArcsOfPost } from './remedies/slidePost.ts';
export { remediesFor, withRemedies } from './remedies.ts';
export { nearestSafeAngle, type SafeArc, safeArcs } from './safeArcs.ts';
export { canSlide, type SafeOptions, type SafePlaces, safePlacesOf, slideToSafe } from './safePlaces.ts';
export { type Shake, shakeOf, sideMovementOver } from './shake.ts';
export type { Heights, Solid } from './solid.ts';
export { heightsOfArbor } from './solids/arborSolids.ts';
export { wheelLabel } from './solids/wheelSolids.ts';
export { solidsOf } from './solids.ts';
export { type Stack, type StackPiece, type StackTolerance, stackOf } from './stackOf.ts';
