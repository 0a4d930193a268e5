/** The error of a period in words and few digits, as the search for counts tells it. */
import { periodErrorOf } from './periods.ts';
import { digitsOf, exactly, type Rational } from './rational.ts';

/** A plain decimal with few digits, for sentences: never in exponent form. */
export function roundText(value: number, digits = 3): string {
  const exact = Number.isFinite(value) ? exactly(value) : undefined;
  return exact ? digitsOf(exact, digits) : 'no number';
}

/** "+9.32 ppm: loses 0.806 s a day, one day in 294 years", with its measures. */
export function errorInWords(error: Rational) {
  const measures = periodErrorOf(error);
  const { ppm, gainSecondsPerDay, yearsPerDay } = measures;
  if (yearsPerDay === undefined) return { ...measures, says: 'exact' };
  const drift = `${gainSecondsPerDay > 0 ? 'gains' : 'loses'} ${roundText(Math.abs(gainSecondsPerDay))} s a day`;
  const says = `${ppm > 0 ? '+' : ''}${roundText(ppm)} ppm: ${drift}, one day in ${roundText(yearsPerDay)} years`;
  return { ...measures, says };
}
