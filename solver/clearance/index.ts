/**
 * Clearance: what fouls what, and by how much.
 *
 * Read in this order: `finding.ts` (what a check gives), `solids.ts` (what can touch), `planGap.ts` (how near two
 * solids come in plan), `pairTerms.ts` (what a pair owes), `checkGaps.ts`, `checkMovement.ts`.
 *
 * ```ts
 * const placed = plantMovement(movement);
 * for (const finding of checkMovement(placed)) console.log(finding.says);
 * ```
 */
export { checkMovement } from './checkMovement.ts';
export type { Finding, Remedy } from './finding.ts';
export { gapBetween, type PartGap } from './gapBetween.ts';
export { type PlanGap, planGapOf } from './planGap.ts';
export { safeArcsOfPost } from './remedies/slidePost.ts';
export { remediesFor, withRemedies } from './remedies.ts';
export { nearestSafeAngle, type SafeArc, safeArcs } from './safeArcs.ts';
export { type Shake, shakeOf } from './shake.ts';
export { type Heights, heightsOfArbor, type Solid, solidsOf, wheelLabel } from './solids.ts';
