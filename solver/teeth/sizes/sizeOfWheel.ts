/** Circles and teeth of any wheel: form, table and the wheel's own factors brought together. */
import type { Movement, Wheel } from '../../movement/schema.ts';
import { kindOf } from '../forms/kinds/formKinds.ts';
import type { WheelSize } from './wheelSize.ts';

/**
 * The size of a wheel of the movement, mm. Always gives finite numbers; what is doubtful stands in `doubts`.
 *
 * @param movement tells the mate (from the depth rules), which decides wheel or pinion and a cycloidal addendum
 */
export const sizeOfWheel = (wheel: Wheel, movement: Movement): WheelSize => kindOf(wheel).size(wheel, movement);
