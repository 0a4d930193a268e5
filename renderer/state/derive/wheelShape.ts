/** The drawn shape of a wheel: one tooth as points, and the windows between its arms. Filled from the room of teeth. */
import type { OutlineShape } from '../../../solver/geometry/index.ts';

/** Points along one pitch of a tooth profile; between them the line is straight. 33 keeps a tooth 200 px tall smooth to a third of a pixel. */
export const PROFILE_POINTS = 33;

/** What of a wheel is drawn at its place. */
export interface WheelShape {
  /** [x0, y0, …] of one pitch from root to root, PROFILE_POINTS points, tooth centred on angle 0, mm from the centre. */
  readonly profile: Float32Array;
  readonly windows: readonly OutlineShape[];
}
