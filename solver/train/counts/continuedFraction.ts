/** Continued fractions: the best simple fractions for a number, shortest first. */
import { divide, exactly, ONE, type Rational, rational, subtract } from '../turning/rational.ts';

/** A number as terms, and the fractions that they give when cut off. */
export interface ContinuedFraction {
  readonly terms: readonly bigint[];
  /** Value of the fraction cut off after each term. */
  readonly convergents: readonly Rational[];
}

/**
 * Terms and convergents of a positive number, at most `most` of them; exact values end by themselves.
 * Gives undefined where the text is no positive number. Source: Euclid's algorithm on the fraction.
 */
export function continuedFraction(value: number | string | Rational, most = 20): ContinuedFraction | undefined {
  let rest = typeof value === 'object' ? value : exactly(value);
  if (!rest || rest.n <= 0n) return undefined;
  const terms: bigint[] = [];
  const convergents: Rational[] = [];
  let [p, q, beforeP, beforeQ] = [1n, 0n, 0n, 1n];
  while (terms.length < most) {
    const term = rest.n / rest.d;
    [p, q, beforeP, beforeQ] = [term * p + beforeP, term * q + beforeQ, p, q];
    terms.push(term);
    convergents.push(rational(p, q));
    const fraction = subtract(rest, rational(term));
    if (fraction.n === 0n) break;
    rest = divide(ONE, fraction);
  }
  return { terms, convergents };
}
