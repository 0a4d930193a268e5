/** Fits: bore and pivot, pressed bushes, reamers. Start with `fits.ts`. */
export {
  boreBeforePressing,
  FIT_USES,
  type FitFeel,
  type FitUse,
  feelOf,
  fitOf,
  type HoleClass,
  type ShaftClass,
} from './fits.ts';
export { newReamer, reamedHole, warmingToSlip } from './reamers.ts';
