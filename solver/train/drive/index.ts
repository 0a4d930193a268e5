/** Drive: weight and spring, torque at every arbor, pendulum, pallets, lost motion, what comes round again, what dials read. */
export { type PalletPlace, palletPlace } from './escapement.ts';
export type { Expected, InputProblem, Refusal } from './inputCheck.ts';
export { type LostMotion, lostMotionOf } from './lostMotion.ts';
export { beatsOfEscape, type Pendulum, pendulumFor } from './pendulum.ts';
export { type DialReading, readingsAfterTurns } from './readings.ts';
export { type Recurrence, recurrencesOf, suspectsAt } from './recurrence.ts';
export { type SpringDrive, springDrive } from './springDrive.ts';
export { type ArborTorque, type TorqueReport, torquesOf } from './torque.ts';
export { type WeightDrive, weightDrive } from './weightDrive.ts';
