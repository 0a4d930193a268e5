/** A typed train held against a typed target, digit by digit. */
import {
  compare,
  digitsOf,
  divide,
  exactly,
  multiply,
  ONE,
  type Rational,
  rational,
  subtract,
  toNumber,
} from '../turning/rational.ts';

/** How nearly a train makes its target, or what could not be read. */
export type Verified =
  | {
      readonly kind: 'verified';
      readonly ratio: Rational;
      /** Achieved and wanted, fifteen significant digits each. */
      readonly achieved: string;
      readonly wanted: string;
      /** Leading digits that agree; Infinity where the train is exact. */
      readonly digitsThatAgree: number;
      readonly error: Rational;
      readonly errorPpm: number;
    }
  | { readonly kind: 'refused'; readonly field: 'train' | 'target'; readonly found: string };

const DIGITS = 15;

/**
 * The exact value of a train as makers write it: counts joined by `x`, `×`, `*` or `·`, with one stroke for each stage
 * ("46/9 x 104/9") or one for the whole ("43x49 / (16x19)", "43 x 49 / 16 x 19" without another stroke: what follows
 * the stroke divides). Gives undefined where the text is no train.
 */
export function readTrain(text: string): Rational | undefined {
  const plain = text.replace(/[×*·]/g, 'x').replace(/\s+/g, '');
  if (!/^[\d.x/()]+$/.test(plain)) return undefined;
  const strokes = plain.split('/').length - 1;
  const numbers = (part: string): Rational | undefined =>
    part.split('x').reduce<Rational | undefined>((product, factor) => {
      const value = /^\d+(\.\d+)?$/.test(factor) ? exactly(factor) : undefined;
      return product && value && value.n > 0n ? multiply(product, value) : undefined;
    }, ONE);
  const whole = (part: string): string => part.replace(/^\((.*)\)$/, '$1');
  if (strokes <= 1) {
    const [top = '', bottom = '1'] = plain.split('/');
    const driven = numbers(whole(top));
    const drivers = numbers(whole(bottom));
    return driven && drivers ? divide(driven, drivers) : undefined;
  }
  return plain.split('x').reduce<Rational | undefined>((product, stage) => {
    const value = whole(stage).split('/').length > 2 ? undefined : readTrain(whole(stage));
    return product && value ? multiply(product, value) : undefined;
  }, ONE);
}

/** How many leading significant digits two positive numbers share, as they would be printed with `DIGITS`. */
function commonDigits(a: Rational, b: Rational): number {
  const width = Math.max(String(a.n / a.d).length, String(b.n / b.d).length);
  const lift = rational(10n ** BigInt(DIGITS * 2));
  const text = (value: Rational): string => {
    const lifted = multiply(value, lift);
    return String(lifted.n / lifted.d).padStart(width + DIGITS * 2, '0');
  };
  const [left, right] = [text(a), text(b)];
  let same = 0;
  let significant = 0;
  while (same < left.length && left[same] === right[same]) {
    if (significant > 0 || left[same] !== '0') significant++;
    same++;
  }
  return significant;
}

/**
 * Verifies a typed train against a target.
 *
 * @param train  "46/9 x 104/9", or stages as { driver, driven }
 * @param target decimal or fraction, > 0
 */
export function verifyTrain(
  train: string | readonly { readonly driver: number; readonly driven: number }[],
  target: number | string,
): Verified {
  const ratio =
    typeof train === 'string'
      ? readTrain(train)
      : readTrain(train.map((stage) => `${stage.driven}/${stage.driver}`).join('x'));
  if (!ratio) {
    return { kind: 'refused', field: 'train', found: typeof train === 'string' ? train : JSON.stringify(train) };
  }
  const wanted = exactly(target);
  if (!wanted || compare(wanted, rational(0)) <= 0) {
    return { kind: 'refused', field: 'target', found: String(target) };
  }
  const error = subtract(divide(ratio, wanted), ONE);
  const digitsThatAgree = error.n === 0n ? Number.POSITIVE_INFINITY : commonDigits(ratio, wanted);
  return {
    kind: 'verified',
    ratio,
    achieved: digitsOf(ratio, DIGITS),
    wanted: digitsOf(wanted, DIGITS),
    digitsThatAgree,
    error,
    errorPpm: toNumber(error) * 1e6,
  };
}
