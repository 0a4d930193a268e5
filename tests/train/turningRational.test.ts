import fc from 'fast-check';
import Fraction from 'fraction.js';
import { describe, expect, it } from 'vitest';
import {
  add,
  commonDivisor,
  compare,
  digitsOf,
  divide,
  exactly,
  fractionText,
  leastCommonMultiple,
  multiply,
  rational,
  subtract,
  toNumber,
} from '../../solver/train/turning/rational.ts';

const whole = fc.bigInt({ min: -(10n ** 30n), max: 10n ** 30n });
const positive = fc.bigInt({ min: 1n, max: 10n ** 30n });

describe('exact fractions against an independent library of fractions', () => {
  it('sums, differences, products, quotients, order, common multiples (property)', () => {
    fc.assert(
      fc.property(whole, positive, whole, positive, (a, b, c, d) => {
        const [x, y] = [rational(a, b), rational(c, d)];
        const [p, q] = [new Fraction(a, b), new Fraction(c, d)];
        expect(fractionText(add(x, y))).toBe(p.add(q).toFraction());
        expect(fractionText(subtract(x, y))).toBe(p.sub(q).toFraction());
        expect(fractionText(multiply(x, y))).toBe(p.mul(q).toFraction());
        if (c !== 0n) expect(fractionText(divide(x, y))).toBe(p.div(q).toFraction());
        expect(compare(x, y)).toBe(Math.sign(p.compare(q)));
        if (a > 0n && c > 0n) {
          expect(fractionText(leastCommonMultiple(x, y))).toBe(p.lcm(q).toFraction());
          expect(fractionText(commonDivisor(x, y))).toBe(p.gcd(q).toFraction());
        }
      }),
    );
  });

  it('reads decimals exactly, exponents too, and nothing that is no number', () => {
    fc.assert(
      fc.property(fc.double({ noNaN: true, noDefaultInfinity: true, min: -1e12, max: 1e12 }), (value) => {
        // Below the normal doubles one digit is all there is, and it may round either way.
        fc.pre(value === 0 || Math.abs(value) > 1e-300);
        const read = exactly(value);
        expect(read && toNumber(read)).toBe(value === 0 ? 0 : value);
      }),
    );
    expect(fractionText(exactly('1e-9') ?? rational(0))).toBe('1/1000000000');
    expect(fractionText(exactly('-2.50e3') ?? rational(0))).toBe('-2500');
    for (const bad of ['', '.', 'e5', '1/0', '1/2/3x', '0x10', 'NaN', '1e99999', Number.POSITIVE_INFINITY]) {
      expect(exactly(bad)).toBeUndefined();
    }
  });

  it('prints digits as the number rounded to them, without exponents (property)', () => {
    fc.assert(
      fc.property(whole, positive, fc.integer({ min: 1, max: 20 }), (a, b, digits) => {
        const text = digitsOf(rational(a, b), digits);
        expect(text).toMatch(/^-?\d+(\.\d+)?$/);
        const [shown, exact] = [new Fraction(text), new Fraction(a, b)];
        // Within half a unit of the last digit: relative to the leading one.
        const off = shown.sub(exact).abs();
        expect(
          off
            .mul(new Fraction(10n ** BigInt(digits - 1)))
            .mul(2)
            .compare(exact.abs()),
        ).toBeLessThanOrEqual(0);
      }),
    );
    expect(digitsOf(rational(1, 3))).toBe('0.3333333333');
    expect(digitsOf(rational(2392, 81))).toBe('29.53086420');
    expect(digitsOf(rational(999_999, 1_000_000), 3)).toBe('1.00');
    expect(digitsOf(rational(5, 2))).toBe('2.5');
    expect(digitsOf(rational(123_456_789), 3)).toBe('123000000');
  });

  it('becomes the nearest double or the one beside it, for numbers of any size (property)', () => {
    fc.assert(
      fc.property(fc.bigInt({ min: 1n, max: 10n ** 400n }), fc.bigInt({ min: 1n, max: 10n ** 400n }), (a, b) => {
        const value = toNumber(rational(a, b));
        const reference = Number(digitsOf(rational(a, b), 25));
        if (reference > 1e300 || reference < 1e-300) expect(Number.isFinite(value)).toBe(true);
        else expect(Math.abs(value / reference - 1)).toBeLessThan(3e-16);
      }),
    );
  });
});
