/**
 * Exact fractions of whole numbers of any size, as plain data.
 *
 * Plain `{ n, d }` pairs and not a class, because they travel to and from a worker, where classes lose
 * their methods. Always in lowest terms with `d` > 0, so equal fractions have equal fields.
 */

/** The fraction n/d in lowest terms, d > 0. */
export interface Rational {
  readonly n: bigint;
  readonly d: bigint;
}

function greatestCommonDivisor(a: bigint, b: bigint): bigint {
  let x = a < 0n ? -a : a;
  let y = b < 0n ? -b : b;
  while (y !== 0n) [x, y] = [y, x % y];
  return x;
}

/** The fraction n/d in lowest terms. Throws where d is 0: a broken promise of the caller. */
export function rational(n: bigint | number, d: bigint | number = 1n): Rational {
  const top = BigInt(n);
  const bottom = BigInt(d);
  if (bottom === 0n) throw new RangeError(`fraction ${top}/0`);
  const divisor = greatestCommonDivisor(top, bottom) * (bottom < 0n ? -1n : 1n);
  return divisor === 0n ? { n: 0n, d: 1n } : { n: top / divisor, d: bottom / divisor };
}

export const ZERO: Rational = { n: 0n, d: 1n };
export const ONE: Rational = { n: 1n, d: 1n };

const DECIMAL = /^([+-]?)(\d*)(?:\.(\d*))?(?:e([+-]?\d{1,4}))?$/i;

/**
 * The exact value of a decimal number ("29.530588853", 1e-9) or of a fraction ("4029/4018").
 * A JavaScript number stands for its shortest decimal form, which is what the maker typed.
 * Gives undefined where the text is no number.
 */
export function exactly(value: number | string): Rational | undefined {
  const text = String(value).trim();
  const slash = text.indexOf('/');
  if (slash >= 0) {
    const top = exactly(text.slice(0, slash));
    const bottom = exactly(text.slice(slash + 1));
    return top && bottom && bottom.n !== 0n ? divide(top, bottom) : undefined;
  }
  const match = DECIMAL.exec(text);
  const whole = match?.[2] ?? '';
  const part = match?.[3] ?? '';
  if (!match || whole.length + part.length === 0) return undefined;
  const digits = BigInt(whole + part) * (match[1] === '-' ? -1n : 1n);
  const power = Number(match[4] ?? 0) - part.length;
  return power >= 0 ? rational(digits * 10n ** BigInt(power)) : rational(digits, 10n ** BigInt(-power));
}

/** The exact sum. */
export const add = (a: Rational, b: Rational): Rational => rational(a.n * b.d + b.n * a.d, a.d * b.d);
/** The exact difference, `a` less `b`. */
export const subtract = (a: Rational, b: Rational): Rational => rational(a.n * b.d - b.n * a.d, a.d * b.d);
/** Cancels crosswise before multiplying: cheap where one of the two is small, and in lowest terms at once. */
export function multiply(a: Rational, b: Rational): Rational {
  const left = greatestCommonDivisor(a.n, b.d);
  const right = greatestCommonDivisor(b.n, a.d);
  if (left === 0n || right === 0n) return ZERO;
  return { n: (a.n / left) * (b.n / right), d: (a.d / right) * (b.d / left) };
}
/** Throws where b is 0: a broken promise of the caller. */
export function divide(a: Rational, b: Rational): Rational {
  if (b.n === 0n) throw new RangeError(`division of ${a.n}/${a.d} by 0`);
  return multiply(a, b.n < 0n ? { n: -b.d, d: -b.n } : { n: b.d, d: b.n });
}
/** The fraction with the other sign. */
export const negate = (a: Rational): Rational => ({ n: -a.n, d: a.d });
/** The fraction without its sign. */
export const magnitude = (a: Rational): Rational => (a.n < 0n ? negate(a) : a);
/** Whether the fraction is nought. */
export const isZero = (a: Rational): boolean => a.n === 0n;
/** Whether two fractions in lowest terms are the same number. */
export const equals = (a: Rational, b: Rational): boolean => a.n === b.n && a.d === b.d;

/** -1, 0 or 1. */
export function compare(a: Rational, b: Rational): -1 | 0 | 1 {
  const difference = a.n * b.d - b.n * a.d;
  return difference < 0n ? -1 : difference > 0n ? 1 : 0;
}

/** Least positive fraction that both divide a whole number of times (both > 0). */
export function leastCommonMultiple(a: Rational, b: Rational): Rational {
  const top = (a.n * b.n) / greatestCommonDivisor(a.n, b.n);
  return rational(top, greatestCommonDivisor(a.d, b.d));
}

/** Greatest fraction that divides both a whole number of times. */
export const commonDivisor = (a: Rational, b: Rational): Rational =>
  rational(greatestCommonDivisor(a.n * b.d, b.n * a.d), a.d * b.d);

const bitsOf = (a: bigint): number => (a < 0n ? -a : a).toString(16).length * 4;

/** Nearest double (within one unit in the last place) for fractions of any size; finite, 0 on underflow. */
export function toNumber(a: Rational): number {
  const top = Number(a.n);
  const bottom = Number(a.d);
  if (Number.isSafeInteger(top) && Number.isSafeInteger(bottom)) return top / bottom;
  // Scale so that the whole quotient has 64 bits or a few more, then divide once.
  const shift = 66 - (bitsOf(a.n) - bitsOf(a.d));
  const quotient = shift >= 0 ? (a.n << BigInt(shift)) / a.d : a.n / (a.d << BigInt(-shift));
  // In two steps, so that the power of two neither overflows nor vanishes before it is used.
  const half = Math.trunc(-shift / 2);
  const value = Number(quotient) * 2 ** half * 2 ** (-shift - half);
  return Number.isFinite(value) ? value : Math.sign(Number(quotient)) * Number.MAX_VALUE;
}

/** "45/2", or "12" where whole. */
export const fractionText = (a: Rational): string => (a.d === 1n ? `${a.n}` : `${a.n}/${a.d}`);

/**
 * The fraction as a plain decimal with so many significant digits, rounded half away from zero; only exact values
 * end early ("0.5", but "29.53086420"). Never in exponent form.
 */
export function digitsOf(a: Rational, digits = 10): string {
  if (a.n === 0n) return '0';
  const top = a.n < 0n ? -a.n : a.n;
  // Place of the first digit: the largest p with 10^p <= value.
  let place = String(top).length - String(a.d).length;
  const scaled = (power: number): bigint => (power >= 0 ? a.d * 10n ** BigInt(power) : a.d);
  const lifted = (power: number): bigint => (power < 0 ? top * 10n ** BigInt(-power) : top);
  if (lifted(place) < scaled(place)) place--;
  let after = digits - 1 - place;
  const numerator = after >= 0 ? top * 10n ** BigInt(after) : top;
  const denominator = after >= 0 ? a.d : a.d * 10n ** BigInt(-after);
  const exact = numerator % denominator === 0n;
  let rounded = (2n * numerator + denominator) / (2n * denominator);
  // 9.996 to three digits is 10.0, one place up.
  if (rounded === 10n ** BigInt(digits)) {
    rounded /= 10n;
    after--;
  }
  const text = after >= 0 ? String(rounded).padStart(after + 1, '0') : String(rounded * 10n ** BigInt(-after));
  const sign = a.n < 0n ? '-' : '';
  if (after <= 0) return sign + text;
  const whole = text.slice(0, text.length - after);
  const digitsAfter = text.slice(text.length - after);
  const part = exact ? digitsAfter.replace(/0+$/, '') : digitsAfter;
  return sign + whole + (part ? `.${part}` : '');
}
