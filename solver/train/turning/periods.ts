/** Periods as exact seconds, and what an error of one comes to. */
import { exactly, multiply, type Rational, rational, toNumber } from './rational.ts';

export const SECONDS = { s: 1n, min: 60n, h: 3600n, d: 86_400n } as const;
/** Mean tropical year, days: source the Astronomical Almanac for 2000 (365.242190). */
export const YEAR_DAYS = rational(365_242_190n, 1_000_000n);
/** Exact seconds of a period as the file states it; undefined where the number is not finite or not positive. */
export function secondsOf(period: {
  readonly value: number;
  readonly unit: keyof typeof SECONDS;
}): Rational | undefined {
  const value = Number.isFinite(period.value) && period.value > 0 ? exactly(period.value) : undefined;
  return value && multiply(value, rational(SECONDS[period.unit]));
}

/** The error of a period in the measures of the trade. */
export interface PeriodError {
  readonly ppm: number;
  /** + gains, - loses, seconds a day. */
  readonly gainSecondsPerDay: number;
  /** Absent where exact. */
  readonly yearsPerDay?: number;
}

/** What a relative error of a period comes to: + is a period too long, so that the hand loses. */
export function periodErrorOf(error: Rational): PeriodError {
  const relative = toNumber(error);
  if (error.n === 0n) return { ppm: 0, gainSecondsPerDay: 0 };
  // The hand turns 1/(1 + e) as fast as wanted; what it gains in a day follows from that.
  const gainSecondsPerDay = relative > -1 ? (-relative / (1 + relative)) * 86_400 : Number.MAX_VALUE;
  const yearsPerDay = 86_400 / (Math.abs(gainSecondsPerDay) * toNumber(YEAR_DAYS));
  return { ppm: relative * 1e6, gainSecondsPerDay, yearsPerDay };
}
