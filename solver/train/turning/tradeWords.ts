/** Periods, errors and fractions in the words and units of the trade. */
import { digitsOf, divide, exactly, magnitude, multiply, type Rational, rational, toNumber } from './rational.ts';

export const SECONDS = { s: 1n, min: 60n, h: 3600n, d: 86_400n } as const;
/** Mean tropical year, days: source the Astronomical Almanac for 2000 (365.242190). */
export const YEAR_DAYS = rational(365_242_190n, 1_000_000n);
const YEAR_SECONDS = multiply(YEAR_DAYS, rational(86_400n));

/** A measure of time with its exact length. */
type Unit = { readonly seconds: Rational; readonly name: string };
const UNITS: readonly Unit[] = [
  { seconds: multiply(YEAR_SECONDS, rational(3n)), name: 'years' },
  { seconds: rational(SECONDS.d), name: 'd' },
  { seconds: rational(SECONDS.h), name: 'h' },
  { seconds: rational(SECONDS.min), name: 'min' },
];

/** Exact seconds of a period as the file states it; undefined where the number is not finite or not positive. */
export function secondsOf(period: {
  readonly value: number;
  readonly unit: keyof typeof SECONDS;
}): Rational | undefined {
  const value = Number.isFinite(period.value) && period.value > 0 ? exactly(period.value) : undefined;
  return value && multiply(value, rational(SECONDS[period.unit]));
}

/** Seconds beyond which digits tell a maker nothing: 4.5 thousand million years, and a million-millionth. */
const LONGEST = 1.4e17;
const SHORTEST = 1e-12;

/** "29.53058885 d": years from three years up, else days, hours, minutes or seconds, whichever is one or more. */
export function periodText(seconds: Rational, digits = 10): string {
  const long = toNumber(magnitude(seconds));
  if (long > LONGEST) return 'longer than the age of the Earth';
  if (long < SHORTEST) return 'shorter than a picosecond';
  const unit = UNITS.find((candidate) => long >= toNumber(candidate.seconds));
  if (!unit) return `${digitsOf(seconds, digits)} s`;
  const size = unit.name === 'years' ? YEAR_SECONDS : unit.seconds;
  return `${digitsOf(divide(seconds, size), digits)} ${unit.name}`;
}

/** A plain decimal with few digits, for sentences: never in exponent form. */
export function roundText(value: number, digits = 3): string {
  const exact = Number.isFinite(value) ? exactly(value) : undefined;
  return exact ? digitsOf(exact, digits) : 'no number';
}

/** The error of a period in the measures of the trade. */
export interface ErrorInWords {
  readonly ppm: number;
  /** + gains, - loses, seconds a day. */
  readonly gainSecondsPerDay: number;
  /** Absent where exact. */
  readonly yearsPerDay?: number;
  readonly says: string;
}

/**
 * What a relative error of a period comes to: + is a period too long, so that the hand loses.
 * "+9.32 ppm: loses 0.806 s a day, one day in 294 years".
 */
export function errorInWords(error: Rational): ErrorInWords {
  const relative = toNumber(error);
  if (error.n === 0n) return { ppm: 0, gainSecondsPerDay: 0, says: 'exact' };
  const ppm = relative * 1e6;
  // The hand turns 1/(1 + e) as fast as wanted; what it gains in a day follows from that.
  const gainSecondsPerDay = relative > -1 ? (-relative / (1 + relative)) * 86_400 : Number.MAX_VALUE;
  const yearsPerDay = 86_400 / (Math.abs(gainSecondsPerDay) * toNumber(YEAR_DAYS));
  const sign = ppm > 0 ? '+' : '';
  const drift = `${gainSecondsPerDay > 0 ? 'gains' : 'loses'} ${roundText(Math.abs(gainSecondsPerDay))} s a day`;
  return {
    ppm,
    gainSecondsPerDay,
    yearsPerDay,
    says: `${sign}${roundText(ppm)} ppm: ${drift}, one day in ${roundText(yearsPerDay)} years`,
  };
}
