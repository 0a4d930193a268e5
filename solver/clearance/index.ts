/**
 * Clearance: what fouls what, and by how much.
 *
 * Read in this order: `findings/finding.ts` (what a check gives), `solids/solid.ts` (what can touch), `gaps/planGap.ts` (how near
 * two solids come in plan), `gaps/pairTerms.ts` (what a pair owes), `gaps/gapChecker.ts`, `checks/checkMovement.ts`. Two more
 * faces belong to the room: `safe/index.ts` and `rehearsal/index.ts`.
 *
 * ```ts
 * const placed = plantMovement(movement);
 * for (const { cause, gap } of checkMovement(placed)) console.log(cause.kind, gap);
 * ```
 */

export { type AssemblyOrder, assemblyOrder } from './checks/assemblyOrder.ts';
export { type Buildable, buildable, isBuildable } from './checks/buildable.ts';
export { checkMovement, createChecker, type MovementChecker } from './checks/checkMovement.ts';
export { camberHeight, type WallContact, wallContacts } from './contact/wallContact.ts';
export { type DepthFault, depthVerdicts, type JudgedDepth } from './depths/depthVerdicts.ts';
export type { DepthCause, FindingCause } from './findings/cause.ts';
export type { Finding, Remedy } from './findings/finding.ts';
export { gapBetween } from './gaps/gapBetween.ts';
export { type GapNow, gapNow, type NearGap, nearGapsOf } from './gaps/nearGaps.ts';
export { planGapsOwed } from './gaps/pairTerms.ts';
export { adviceFor } from './remedies/advice.ts';
export type { Advice, PlainAdvice } from './remedies/adviceKinds.ts';
export type { CureDeed, NewCollar } from './remedies/deed.ts';
export { remediesFor, withRemedies } from './remedies/remedies.ts';
export { type Shake, shakeOf, sideMovementOver } from './shake/shake.ts';
export type { Piece } from './solids/piece.ts';
export type { Solid } from './solids/solid.ts';
export { solidsOf } from './solids/solids.ts';
export { type NoStack, type Stack, stackOf } from './stacks/stackOf.ts';
