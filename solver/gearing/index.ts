/**
 * Gearing: sizes, tooth forms, contact of a pair, turning of the train, counts, drive. The room's face for outsiders.
 */

// Turning: start with turning/turning.ts (what it gives), then turning/turnMovement.ts.
export {
  add,
  compare,
  digitsOf,
  divide,
  exactly,
  fractionText,
  magnitude,
  multiply,
  type Rational,
  rational,
  subtract,
  toNumber,
} from './turning/rational.ts';
export { type ErrorInWords, errorInWords, periodText, roundText, secondsOf } from './turning/tradeWords.ts';
export type {
  ArborTurning,
  IndicationTurning,
  Link,
  LockedRing,
  Rate,
  Sense,
  SharedAxes,
  Turning,
  TurningProblem,
  TurningState,
} from './turning/turning.ts';
export { turnMovement } from './turning/turnMovement.ts';
