/** Periods and their errors in the units of the trade: days and years, parts in a million, seconds a day. */
import { type PeriodError, YEAR_DAYS } from '../../train/index.ts';
import {
  digitsOf,
  divide,
  exactly,
  magnitude,
  multiply,
  type Rational,
  rational,
  toNumber,
} from '../../train/turning/rational.ts';
import type { Speaker } from '../speaker.ts';

/** Seconds beyond which digits tell a maker nothing: 4.5 thousand million years, and a million-millionth. */
const LONGEST = 1.4e17;
const SHORTEST = 1e-12;

const DAY = rational(86_400n);
const YEAR = multiply(YEAR_DAYS, DAY);

/** Units from the longest: from how many seconds each is used, and how long it is. Years from three up. */
const UNITS = [
  { from: multiply(YEAR, rational(3n)), seconds: YEAR, name: 'years' },
  { from: DAY, seconds: DAY, name: 'd' },
  { from: rational(3600n), seconds: rational(3600n), name: 'h' },
  { from: rational(60n), seconds: rational(60n), name: 'min' },
] as const;

/**
 * "29.53058885 d": years from three years up, else days, hours, minutes or seconds, whichever is one or more.
 *
 * @param seconds exact
 * @param digits  significant ones
 */
export function periodSays(seconds: Rational, digits = 10): string {
  const long = toNumber(magnitude(seconds));
  if (long > LONGEST) return 'longer than the age of the Earth';
  if (long < SHORTEST) return 'shorter than a picosecond';
  const unit = UNITS.find(({ from }) => long >= toNumber(from));
  return unit ? `${digitsOf(divide(seconds, unit.seconds), digits)} ${unit.name}` : `${digitsOf(seconds, digits)} s`;
}

/** A plain decimal with few digits (three): never in exponent form. "no number" for what is none. */
export function roundSays(value: number, { exact }: Speaker, digits = 3): string {
  const decimal = Number.isFinite(value) ? exactly(value) : undefined;
  return decimal ? exact(decimal, digits) : 'no number';
}

/** "+9.32 ppm: loses 0.806 s a day, one day in 294 years", or "exact". */
export function periodErrorSays({ ppm, gainSecondsPerDay, yearsPerDay }: PeriodError, speaker: Speaker): string {
  if (yearsPerDay === undefined) return 'exact';
  const sign = ppm > 0 ? '+' : '';
  const drift = `${gainSecondsPerDay > 0 ? 'gains' : 'loses'} ${roundSays(Math.abs(gainSecondsPerDay), speaker)} s a day`;
  return `${sign}${roundSays(ppm, speaker)} ppm: ${drift}, one day in ${roundSays(yearsPerDay, speaker)} years`;
}
