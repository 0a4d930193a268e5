/** Figures and names: one formatter, one namer. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Movement } from '../../solver/movement/schema.ts';
import { counted, listed, namesOf, speakerOf } from '../../solver/words/index.ts';
import { movementOfParts } from '../support/movements.ts';

function movementOf(fields: object): Movement {
  return movementOfParts({ title: 'm', ...fields });
}

const pair = {
  arbors: [
    { id: 'a', name: 'Third', at: [0, 0] },
    { id: 'b', at: [10, 0] },
  ],
  wheels: [
    { id: 'w', arbor: 'a', teeth: 64, size: { module: 0.5 }, form: 'involute', level: 0, thickness: 1 },
    { id: 'p', arbor: 'b', teeth: 8, size: { module: 0.5 }, form: 'involute', level: 0, thickness: 1 },
  ],
  rules: [
    { kind: 'depth', id: 'd', wheels: ['w', 'p'] },
    { kind: 'bearing', id: 'r', point: 'b', centre: 'a', angle: 30 },
  ],
};

describe('figures', () => {
  const mm = speakerOf(movementOf(pair));
  const inch = speakerOf(movementOf({ ...pair, display: { unit: 'inch', decimals: 3 } }));

  test('a length is told in the unit and decimals of the document', () => {
    expect(mm.length(31.27)).toBe('31.270 mm');
    expect(inch.length(25.4)).toBe('1.0000 in');
    expect(mm.length(-0.905)).toBe('−0.905 mm');
    expect(speakerOf(movementOf(pair), { minus: '-' }).length(-0.905)).toBe('-0.905 mm');
  });

  test('what is not zero never prints as zero, and zero has no sign', () => {
    expect(mm.figure(0.0000169)).toBe('0.000017');
    expect(mm.figure(-0)).toBe('0.000');
    expect(mm.figure(-2.8e-15)).toBe('0.000');
    fc.assert(fc.property(fc.double({ min: 1e-8, max: 1e3, noNaN: true }), (value) => Number(mm.figure(value)) > 0));
  });

  test('a direction stays from 0 up to 360', () => {
    expect(mm.direction(-Math.PI / 2)).toBe('270.0°');
    expect(mm.direction(2 * Math.PI - 1e-6)).toBe('0.0°');
    expect(mm.angle(-Math.PI / 2)).toBe('−90.0°');
  });

  test('one thing is one, two are many', () => {
    expect([counted(1, 'file'), counted(0, 'file'), counted(2, 'try', 'tries')]).toEqual([
      '1 file',
      '0 files',
      '2 tries',
    ]);
    expect([listed([]), listed(['a']), listed(['a', 'b', 'c'], 'or')]).toEqual(['', 'a', 'a, b or c']);
  });
});

describe('names', () => {
  test('a part is called by its name, else by what it is', () => {
    const { name, rule } = speakerOf(movementOf(pair));
    expect([name('a'), name('b'), name('w'), name('p')]).toEqual([
      'Third',
      'arbor 2',
      'wheel of 64 on Third',
      'pinion of 8 on arbor 2',
    ]);
    expect([rule('d'), rule('r')]).toEqual(['the depth of Third and arbor 2', 'the direction of arbor 2 from Third']);
  });

  test('every part of any document has words of its own', () => {
    const names = fc.array(fc.constantFrom('Third', 'third', 'arbor 2', undefined), { minLength: 2, maxLength: 6 });
    fc.assert(
      fc.property(names, (chosen) => {
        const arbors = chosen.map((name, at) => ({
          id: `id${at}`,
          at: [at, 0],
          ...(name === undefined ? {} : { name }),
        }));
        const told = [...namesOf(movementOf({ arbors })).values()].map((each) => each.toLowerCase());
        expect(new Set(told).size).toBe(arbors.length);
      }),
    );
  });
});
