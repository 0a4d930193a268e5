/** Bodies of parts: heights that are derived, the holes that plates need, usual bearings and pipes. A public face of clearance. */
export { heightsOfArbor, heightsOfPost } from './heights.ts';
export { needsOfPlate, type PlateNeed } from './plateNeeds.ts';
export { usualBearing, usualPipe } from './usualBearing.ts';
