/**
 * The train: how everything turns. Ratios as exact fractions through pipes, idlers, carriers, worms; rings and phases.
 *
 * Read `turning/turning.ts` (what it gives), `turning/turnMovement.ts`, `turning/meshes.ts` and `turning/ringClosure.ts`.
 * Three more faces belong to the room: `counts/index.ts` (tooth numbers for a ratio), `drive/index.ts` (power, torque,
 * pendulum, lost motion) and `turning/rational.ts` (exact fractions).
 *
 * @example
 * const { rates } = turnMovement(movement);
 * fractionText(rates.get(arborId).perTurn);
 */
export { closeRing } from './turning/closeRing.ts';
export type { LockedRing, Sense, SharedAxes, TurningState } from './turning/linkage.ts';
export { meshesOf } from './turning/meshes.ts';
export { type PeriodError, periodErrorOf, YEAR_DAYS } from './turning/periods.ts';
export { checkRing, type MeshRing, meshRings, type RingClosure } from './turning/ringClosure.ts';
export { rollingPhases } from './turning/rollingPhases.ts';
export { type ToothMark, toothPhases } from './turning/toothPhases.ts';
export type { ArborTurning, IndicationTurning, Rate, Turning, TurningProblem } from './turning/turning.ts';
export type { Joining, NothingShown, TurningFault } from './turning/turningFaults.ts';
export { turnMovement } from './turning/turnMovement.ts';
