/** A ratio from two periods as a maker types them: "12 h", "29.530588853d", or the name of a constant. */

import { SECONDS } from '../turning/periods.ts';
import { divide, exactly, multiply, type Rational, rational } from '../turning/rational.ts';
import { type AstronomyConstant, CONSTANTS, constantNamed, secondsOfConstant } from './constants.ts';

/** The exact ratio of two periods, or which of them could not be read. */
export type PeriodRatio =
  | { readonly kind: 'ratio'; readonly ratio: Rational; readonly fromSeconds: Rational; readonly toSeconds: Rational }
  | { readonly kind: 'refused'; readonly field: 'from' | 'to'; readonly found: string };

const PERIOD = /^([\d./e+-]+)\s*(s|min|h|d)$/i;

/** Exact seconds of a typed period, or undefined where it is none or not more than 0. */
export function readPeriod(text: string, constants: readonly AstronomyConstant[] = CONSTANTS): Rational | undefined {
  const plain = text.trim();
  const named = constantNamed(plain, constants);
  if (named) return secondsOfConstant(named);
  const match = PERIOD.exec(plain);
  const value = match?.[1] === undefined ? undefined : exactly(match[1]);
  const unit = match?.[2]?.toLowerCase() as keyof typeof SECONDS | undefined; // one of the four by the pattern
  return value && unit && value.n > 0n ? multiply(value, rational(SECONDS[unit])) : undefined;
}

/** Turns of an arbor with the period `from` for one turn of one with the period `to`. */
export function ratioOfPeriods(
  from: string,
  to: string,
  constants: readonly AstronomyConstant[] = CONSTANTS,
): PeriodRatio {
  const [fromSeconds, toSeconds] = [readPeriod(from, constants), readPeriod(to, constants)];
  const refuse = (field: 'from' | 'to', found: string): PeriodRatio => ({
    kind: 'refused',
    field,
    found,
  });
  if (!fromSeconds) return refuse('from', from);
  if (!toSeconds) return refuse('to', to);
  return { kind: 'ratio', ratio: divide(toSeconds, fromSeconds), fromSeconds, toSeconds };
}
