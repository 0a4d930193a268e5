/** Whole wheels as outlines: teeth, bore and arms. Start with `wheelOutline.ts`, then `crossingOut.ts`. */
export { crossingOut, type NoOpenings } from './crossingOut.ts';
export { leastRim, statedArms, usualArms } from './usualArms.ts';
export { type OutlineDoubt, type WheelLoop, type WheelOutline, wheelOutline } from './wheelOutline.ts';
