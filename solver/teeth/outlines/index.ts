/** Whole wheels as outlines: teeth, bore and arms. Start with `wheelOutline.ts`, then `crossingOut.ts`. */
export { crossingOut } from './crossingOut.ts';
export { leastRim, statedArms, usualArms } from './usualArms.ts';
export { type WheelLoop, type WheelOutline, wheelOutline } from './wheelOutline.ts';
