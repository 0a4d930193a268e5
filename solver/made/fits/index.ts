/** Fits: bore and pivot, pressed bushes, reamers. Start with `fits.ts`. */
export {
  boreBeforePressing,
  FIT_USES,
  type Fit,
  type FitFeel,
  type FitUse,
  feelOf,
  fitOf,
  type HoleClass,
  type OutsideTable,
  type PressedBore,
  type ShaftClass,
} from './fits.ts';
export { type PlayChange, SAME_PLAY } from './plays.ts';
export { newReamer, type Reamed, reamedHole, type Warming, warmingToSlip } from './reamers.ts';
