import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { emptyMovement } from '../../solver/movement/index.ts';
import { fixed, lengthText, lengthWithUnit, parseAngle, parseLength } from '../../solver/movement/measures.ts';
import { measureProblemSays, speakerOf } from '../../solver/words/index.ts';

const speaker = speakerOf(emptyMovement());

describe('lengths as they are typed', () => {
  test.each([
    ['12.5', 12.5],
    ['12,5', 12.5],
    [' 12.5 mm ', 12.5],
    ['12.5mm', 12.5],
    ['1/2 in', 12.7],
    ['½"', 12.7],
    ['0.4921"', 0.4921 * 25.4],
    ['3 5/8 in', 3.625 * 25.4],
    ['3⅝ inch', 3.625 * 25.4],
    ['12+0.35', 12.35],
    ['12 - 0.35 mm', 11.65],
    ['1 in + 2 mm', 27.4],
    ['1.2 cm', 12],
    ['0.3 m', 300],
    ['5 thou', 0.127],
    ['50 µm', 0.05],
    ['-3', -3],
    ['−3,25 MM', -3.25],
    ['.5', 0.5],
    ['7.', 7],
    ['-0', 0],
  ])('%s is %f mm', (text, mm) => {
    const parsed = parseLength(text);
    expect(parsed.kind).toBe('length');
    if (parsed.kind === 'length') expect(parsed.mm).toBeCloseTo(mm, 12);
    expect(parsed.kind === 'length' && Object.is(parsed.mm, -0)).toBe(false);
  });

  test.each([
    ['1/2', 12.7],
    ['3 5/8', 92.075],
    ['10 mm', 10],
    ['1 + 1/4', 31.75],
  ])('%s is read in inches where inches are shown', (text, mm) => {
    const parsed = parseLength(text, 'inch');
    expect(parsed.kind === 'length' && parsed.mm).toBeCloseTo(mm, 12);
  });

  test.each([
    ['', 'Nothing was entered'],
    ['twelve', 'does not begin with a number'],
    ['12 furlong', '“furlong” is not a unit'],
    ['12 constructor', '“constructor” is not a unit'],
    ['12 13', 'was not understood'],
    ['1,234.5', 'was not understood'],
    ['12 +', 'A number is missing'],
    ['1/0', 'is no number'],
    ['12 + 1/2 in', 'give each its unit'],
    ['1e9', '“e” is not a unit'],
    ['1000 m', 'beyond 100000.000 mm'],
    ['9'.repeat(400), 'no number'],
  ])('“%s” is refused with what is accepted', (text, words) => {
    const parsed = parseLength(text);
    expect(parsed.kind === 'problem' && measureProblemSays(parsed.problem, speaker)).toContain(words);
    expect(parsed.kind === 'problem' && measureProblemSays(parsed.problem, speaker)).toContain('3 5/8 in');
  });

  test('what is shown reads back, to half of its last place', () => {
    fc.assert(
      fc.property(
        fc.double({ min: -10_000, max: 10_000, noNaN: true }),
        fc.constantFrom('mm' as const, 'inch' as const),
        fc.integer({ min: 0, max: 6 }),
        (mm, unit, decimals) => {
          const parsed = parseLength(lengthWithUnit(mm, unit, decimals), 'mm');
          const half = (0.5000001 * (unit === 'mm' ? 1 : 25.4)) / 10 ** decimals;
          expect(parsed.kind === 'length' && Math.abs(parsed.mm - mm)).toBeLessThanOrEqual(half);
          expect(lengthText(mm, unit, decimals)).not.toMatch(/e|,|^-0\.?0*$/);
        },
      ),
    );
  });

  test('nothing that is typed throws', () => {
    fc.assert(
      fc.property(fc.string({ unit: fc.constantFrom(...'0123456789.,/ +-"\'°inmcµrad½e') }), (text) => {
        for (const parsed of [parseLength(text), parseAngle(text)]) {
          if (parsed.kind === 'length') expect(Number.isFinite(parsed.mm)).toBe(true);
          if (parsed.kind === 'angle') expect(Number.isFinite(parsed.deg)).toBe(true);
        }
      }),
      { numRuns: 2000 },
    );
  });
});

describe('angles as they are typed', () => {
  test.each([
    ['54.6683', 54.6683],
    ['54,5°', 54.5],
    [`54° 40' 6"`, 54 + 40 / 60 + 6 / 3600],
    ['54°40′6″', 54 + 40 / 60 + 6 / 3600],
    [`-0° 30'`, -0.5],
    ['1 rad', 180 / Math.PI],
    ['1/4 turn', 90],
    ['90 - 1/2', 89.5],
  ])('%s is %f degrees', (text, deg) => {
    const parsed = parseAngle(text);
    expect(parsed.kind === 'angle' && parsed.deg).toBeCloseTo(deg, 12);
  });

  test.each([
    ['north', 'does not begin'],
    ['3 mm', '“mm” is not a unit'],
    ['400 turns', 'more than a hundred turns'],
    ['54 40 6', 'was not understood'],
  ])('“%s” is refused with what is accepted', (text, words) => {
    const parsed = parseAngle(text);
    expect(parsed.kind === 'problem' && measureProblemSays(parsed.problem, speaker)).toContain(words);
    expect(parsed.kind === 'problem' && measureProblemSays(parsed.problem, speaker)).toContain('0.954 rad');
  });
});

test('zero is never written with a minus', () => {
  expect(fixed(-0.0004, 3)).toBe('0.000');
  expect(fixed(-0.4, 0)).toBe('0');
  expect(fixed(-0.0005001, 3)).toBe('-0.001');
});
