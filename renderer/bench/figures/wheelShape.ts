/** The drawn shape of a wheel: one tooth as points, and the windows between its arms. Filled from the room of teeth. */
import type { OutlineShape } from '../../../solver/geometry/index.ts';

export interface WheelShape {
  /** [x0, y0, …] of one pitch from root to root, PROFILE_POINTS points, tooth centred on angle 0, mm from the centre. */
  readonly profile: Float32Array;
  readonly windows: readonly OutlineShape[];
}
