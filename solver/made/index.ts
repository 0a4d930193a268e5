/**
 * As made: readings taken off the metal, what they say of the drawing, and what is corrected.
 *
 * Read `readings/depthReadings.ts`, `readings/placeReadings.ts`, `changes/consequences.ts`, `holes/wrongHole.ts`,
 * `holes/cure.ts`. Two more faces belong to the room: `errors/index.ts` (what errors of making would do, before any
 * cutting) and `fits/index.ts` (bores, pivots, reamers).
 *
 * @example
 * const { depths } = consequencesOf(before, after);
 */
export { daysOf, movementAsOf } from './changes/asOf.ts';
export {
  type Consequences,
  consequencesOf,
  type DepthChange,
  type DepthState,
  MOVED,
  movesBetween,
  type PointMove,
} from './changes/consequences.ts';
export type { Cure, Shift } from './holes/cure.ts';
export { type DistancesTell, distancesTell, editsOfWrongHoles } from './holes/distancesTell.ts';
export { type OffPlace, offPlaces } from './holes/offPlaces.ts';
export { type DepthReadings, depthReadings } from './readings/depthReadings.ts';
export type { LengthSlip, PlaceSlip, ReadingDoubt } from './readings/doubt.ts';
export { editOfPlace, type PlaceReadings, placeReadings, type TruePlace, truePlace } from './readings/placeReadings.ts';
export { type SizeReadings, sizeReadings, trueSize } from './readings/sizeReadings.ts';
export { editOfSize, type PartSize, partSizes, sizeKeyOf } from './readings/sizes.ts';
export { type TrueLength, trueLength } from './readings/trueLength.ts';
