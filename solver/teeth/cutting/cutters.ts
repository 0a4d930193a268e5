/** The cutter for a wheel of any form. */
import type { Movement, Wheel } from '../../movement/schema.ts';
import { kindOf } from '../forms/kinds/formKinds.ts';
import type { CutterChoice } from './cutterChoice.ts';

/** Which cutter makes a wheel, or what else makes its spaces. */
export const cutterOf = (wheel: Wheel, movement: Movement): CutterChoice => kindOf(wheel).cutter(wheel, movement);
