import Fraction from 'fraction.js';
import { describe, expect, it } from 'vitest';
import type { ArborId } from '../../solver/movement/ids.ts';
import { emptyMovement } from '../../solver/movement/index.ts';
import { continuedFraction } from '../../solver/train/counts/continuedFraction.ts';
import type { CountedTrain } from '../../solver/train/counts/counts.ts';
import { findCounts } from '../../solver/train/counts/searchCounts.ts';
import { readTrain, verifyTrain } from '../../solver/train/counts/verifyTrain.ts';
import { fractionText, toNumber } from '../../solver/train/turning/rational.ts';
import { turnMovement } from '../../solver/train/turning/turnMovement.ts';
import { speakerOf } from '../../solver/words/index.ts';
import { verifiedSays } from '../../solver/words/train/index.ts';
import { sketchMovement } from '../train/turningMovement.ts';
import { CONVERGENTS, TYPED_TRAINS } from './classicTrains.ts';
import { TRAIN_SEARCHES } from './trainSearches.ts';

/** "46x104 / 9x9", both sides rising. */
function asListed(train: CountedTrain): string {
  const side = (counts: readonly number[]): string => [...counts].sort((a, b) => a - b).join('x');
  return `${side(train.stages.map((stage) => stage.driven))} / ${side(train.stages.map((stage) => stage.driver))}`;
}

describe('twenty exhaustive searches (source in trainSearches.ts)', () => {
  it.each(TRAIN_SEARCHES)('$problem', (search) => {
    const result = findCounts({
      ratio: search.target,
      stages: search.stages,
      drivers: search.drivers,
      driven: search.driven,
      best: 3,
      trainsPerRatio: 1000,
      countTrains: true,
    });
    expect(result.kind).toBe('found');
    if (result.kind !== 'found') return;
    expect(result.rows.map((row) => fractionText(row.ratio))).toEqual(search.best.map((row) => row.ratio));
    result.rows.forEach((row, index) => {
      const wanted = search.best[index];
      expect(Math.abs(toNumber(row.error) - (wanted?.error ?? Number.NaN))).toBeLessThan(1e-13);
      expect(row.trainCount).toBe(wanted?.count);
      const listed = row.trains.map(asListed);
      expect(new Set(listed).size).toBe(listed.length);
      expect(listed).toEqual(expect.arrayContaining([...(wanted?.trains ?? [])]));
      // Every listed train and error again, in the exact fractions of an independent library.
      for (const train of row.trains) {
        const ratio = train.stages.reduce(
          (product, stage) => product.mul(stage.driven).div(stage.driver),
          new Fraction(1),
        );
        expect(ratio.toFraction()).toBe(fractionText(row.ratio));
        const [top, bottom] = search.target.includes('/') ? search.target.split('/') : [search.target, '1'];
        const error = ratio
          .mul(new Fraction(bottom ?? 1))
          .div(new Fraction(top ?? 1))
          .sub(1);
        expect(error.toFraction()).toBe(fractionText(row.error));
      }
    });
  });

  it('tells the errors in the terms that the reference gives: years for a day, seconds a year', () => {
    // Reference F3, "physical size": 4784/81 one day in 293.6 years, 99400/1683 in 7176.6 years;
    // 4029/4018 -7.2042 s a year, 461831/460570 +0.0745 s a year.
    const years = (train: string, target: string): number => {
      const found = verifyTrain(train, target);
      if (found.kind !== 'verified') throw new Error(found.field);
      return 1 / Math.abs((found.errorPpm / 1e6) * 365.25);
    };
    expect(years('46x104/(9x9)', '59.061177706')).toBeCloseTo(293.6, 1);
    expect(years('20x70x71/(9x11x17)', '59.061177706')).toBeCloseTo(7176.6, 0);
    const perYear = (train: string): number => {
      const found = verifyTrain(train, '1.00273790935');
      return found.kind === 'verified' ? (found.errorPpm / 1e6) * 365.25 * 86_400 : Number.NaN;
    };
    expect(perYear('51x79/(41x98)')).toBeCloseTo(-7.2042, 3);
    expect(perYear('61x67x113/(53x79x110)')).toBeCloseTo(0.0745, 4);
  });
});

describe('continued fractions (terms from the reference, recomputed there with exact fractions)', () => {
  it.each(CONVERGENTS)('$name', ({ value, terms, convergents }) => {
    const found = continuedFraction(value, terms.length);
    expect(found?.terms.map(Number)).toEqual(terms);
    expect(found?.convergents.map(fractionText)).toEqual(convergents);
  });

  it('has no expansion for zero, negative numbers and words', () => {
    for (const bad of ['0', '-3.5', 'moon', '1/0', '']) expect(continuedFraction(bad)).toBeUndefined();
  });
});

describe('a differential in print', () => {
  it('H. T. Brown, 507 Mechanical Movements (1868), no. 507: 25 000 turns of the arm for one of C', () => {
    // A (10) and D (10) are driven opposite ways from C (100); E 61 on the one drives F 49, and G 41 beside F drives H 51 on the other.
    const movement = sketchMovement({
      wheels: {
        c: ['C', 100],
        a: ['A', 10],
        i: ['I', 30],
        d: ['D', 10],
        h: ['A', 51],
        e: ['D', 61],
        f: ['P', 49],
        g: ['P', 41],
      },
      depths: ['c a', 'c i', 'i d', 'e f', 'g h'],
      arbors: { D: { ridesOn: 'A' }, arm: { ridesOn: 'A' } },
      couplings: [{ kind: 'carrier', id: 'k', arm: 'arm', carries: ['P'] }],
      drive: { arbor: 'C', period: { value: 1, unit: 'h' } },
    });
    const turns = turnMovement(movement).arbors.get('arm' as ArborId)?.rate?.turns;
    expect(turns && fractionText(turns).replace('-', '')).toBe('25000');
  });
});

describe('trains in print, verified digit by digit', () => {
  it.each(TYPED_TRAINS)('$name', ({ train, value, tolerance, exact }) => {
    const ratio = readTrain(train);
    expect(ratio).toBeDefined();
    if (!ratio) return;
    expect(Math.abs(toNumber(ratio) - value)).toBeLessThanOrEqual(tolerance);
    if (exact !== undefined) expect(fractionText(ratio)).toBe(exact);
  });

  it("Willis's year of 365 d 5 h 48 min 48 s is met exactly", () => {
    // R. Willis, Principles of Mechanism, 1841: 164359/450 = 269/10 x 26/9 x 94/20.
    const found = verifyTrain('269/10 x 26/9 x 94/20', '164359/450');
    expect(found.kind === 'verified' && found.error.n).toBe(0n);
    expect(verifiedSays(found, speakerOf(emptyMovement()))).toBe('164359/450 is exactly 365.242222222222.');
  });

  it('the wrong month train of the mailing list is seen to be wrong', () => {
    const found = verifyTrain('293x149x157/(12x83x233)', '29.53058853');
    expect(found.kind === 'verified' && found.errorPpm).toBeCloseTo(152.4, 0);
    expect(found.kind === 'verified' && found.digitsThatAgree).toBe(4);
  });

  it('counts agreeing digits and refuses what is no train or no target', () => {
    const agree = (train: string, target: string): number | string => {
      const found = verifyTrain(train, target);
      return found.kind === 'verified' ? found.digitsThatAgree : found.field;
    };
    expect(agree('355/113', '3.14159265358979')).toBe(7);
    expect(agree('22/7', '3.14159265358979')).toBe(3);
    expect(agree('46/9 x 104/9', '59.061177706')).toBe(5);
    for (const bad of ['', '46/0', '46/9 y 3', '46//9', '-3/4', '0/4']) expect(agree(bad, '1')).toBe('train');
    for (const bad of ['0', '-1', 'year', '']) expect(agree('1/2', bad)).toBe('target');
  });
});
