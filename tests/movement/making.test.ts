/** Own periods, measured sizes and cures in the document: read, checked, written, kept. Values invented here. */
import { describe, expect, test } from 'vitest';
import { applyEdit, readMovement, writeMovement } from '../../solver/movement/index.ts';
import type { Movement } from '../../solver/movement/schema.ts';
import { sampleDocument } from './sampleMovement.ts';

const period = {
  id: 'metonic',
  name: 'Metonic cycle',
  value: '6940/235',
  unit: 'd',
  source: '235 months in 6940 days',
};

// biome-ignore lint/suspicious/noExplicitAny: nonsense is written into the sample
function read(spoil: (document: any) => void) {
  const document = sampleDocument();
  spoil(document);
  return readMovement(JSON.stringify(document));
}

// biome-ignore lint/suspicious/noExplicitAny: as above
function sound(spoil: (document: any) => void): Movement {
  const reading = read(spoil);
  if (reading.kind === 'problems') throw new Error(reading.problems.map(({ says }) => says).join('\n'));
  return reading.movement;
}

// biome-ignore lint/suspicious/noExplicitAny: as above
function faultsOf(spoil: (document: any) => void) {
  const reading = read(spoil);
  return reading.kind === 'problems' ? reading.problems : [];
}

describe('own periods', () => {
  test('a decimal and a ratio are kept as they were written, with fields that are not known here', () => {
    const decimal = { ...period, id: 'long', value: '29.5305890000', note: 'digits matter', colour: 'red' };
    const movement = sound((document) => (document.constants = [period, decimal]));
    expect(JSON.parse(writeMovement(movement)).constants).toEqual([period, decimal]);
  });

  test.each([
    ['a word', 'value', 'a month'],
    ['nothing', 'value', '0.000'],
    ['a ratio to nothing', 'value', '235/0'],
    ['less than nothing', 'value', '-3'],
    ['a name with a space', 'id', 'long month'],
    ['a unit of no clock', 'unit', 'fortnight'],
  ])('%s is no period: the problem names the field', (_, field, value) => {
    const [problem] = faultsOf((document) => (document.constants = [{ ...period, [field]: value }]));
    expect(problem?.path).toBe(`constants[0].${field}`);
  });

  test('two of one name are told', () => {
    const [problem] = faultsOf((document) => (document.constants = [period, period]));
    expect(problem).toMatchObject({ path: 'constants[1].id' });
  });

  test('an edit of the description adds them, and refuses an unsound one', () => {
    const edited = applyEdit(
      sound(() => {}),
      { kind: 'describe', set: { constants: [period] } },
    );
    expect(edited.kind === 'edited' && edited.movement.constants).toEqual([period]);
    const value = { ...period, value: 'often' };
    expect(
      applyEdit(
        sound(() => {}),
        { kind: 'describe', set: { constants: [value] } },
      ).kind,
    ).toBe('refused');
  });
});

describe('readings and cures', () => {
  test('a bearing is named only for a pivot or the bore it runs in', () => {
    const pivot = { id: 'm9', kind: 'diameter', of: ['centre'], bearing: 0, value: 1.99 };
    expect(sound((document) => document.readings.push(pivot)).readings.at(-1)).toMatchObject(pivot);
    const [problem] = faultsOf((document) => document.readings.push({ ...pivot, kind: 'endShake' }));
    expect(problem?.path).toMatch(/^readings\[\d+\]\.bearing$/);
  });

  test('who said that a figure stands is kept', () => {
    const stands = { by: 'A. Maker', date: '2026-05-01' };
    const movement = sound((document) => (document.readings[0].stands = stands));
    expect(JSON.parse(writeMovement(movement)).readings[0].stands).toEqual(stands);
  });

  test('cures have defaults that are not written, and changes that are', () => {
    const plain = sound(() => {});
    expect(plain.cures).toEqual({ leaveWithin: 0.015, leastWall: 0.8, bushClosing: 0.8, reamerCutsOver: 0.005 });
    expect(JSON.parse(writeMovement(plain))).not.toHaveProperty('cures');
    const edit = { kind: 'describe', set: { cures: { ...plain.cures, plugBeyond: 0.4 } } } as const;
    const changed = applyEdit(plain, edit);
    if (changed.kind === 'refused') throw new Error(JSON.stringify(changed.why));
    expect(JSON.parse(writeMovement(changed.movement)).cures).toEqual({ plugBeyond: 0.4 });
  });
});
