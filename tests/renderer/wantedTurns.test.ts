/** What a hand should show, as it is typed. The lengths of months and days are those of the shipped periods. */
import { describe, expect, test } from 'vitest';
import { addShown, editOfWanted, readWanted, wantedSays } from '../../renderer/offers/wantedTurns.ts';
import { applyEdit, type Edit } from '../../solver/movement/index.ts';
import type { Movement } from '../../solver/movement/schema.ts';
import { CONSTANTS } from '../../solver/train/counts/index.ts';
import { turnMovement } from '../../solver/train/index.ts';
import { periodSays } from '../../solver/words/train/index.ts';
import { movementOf } from './wantedMovement.ts';

function read(text: string) {
  const outcome = readWanted(text, CONSTANTS);
  return outcome.kind === 'wanted' ? outcome.wanted : outcome.says;
}

function edited(movement: Movement, edit: Edit): Movement {
  const outcome = applyEdit(movement, edit);
  if (outcome.kind === 'refused') throw new Error(JSON.stringify(outcome.why));
  return outcome.movement;
}

describe('what is typed', () => {
  test.each([
    ['12 h', { period: { value: 12, unit: 'h' } }],
    ['29,530588853d', { period: { value: 29.530588853, unit: 'd' } }],
    ['.5 MIN', { period: { value: 0.5, unit: 'min' } }],
    ['27/2 turns', { ratio: '27/2' }],
    ['−3 / 4 turns', { ratio: '-3/4' }],
    ['13,5 turns', { ratio: 13.5 }],
  ])('%s', (text, wanted) => {
    expect(read(text)).toEqual(wanted);
  });

  test('a named period comes with its digits and its source, by short name or name', () => {
    const sidereal = { period: { value: 0.99726956633, unit: 'd' }, source: expect.stringContaining('Almanac') };
    expect(read('SIDEREALDAY')).toMatchObject(sidereal);
    expect(read('mean sidereal day')).toMatchObject(sidereal);
  });

  test.each(['', '12', '0 h', '1/0 turns', '0 turns', '-2 d', '1e5x h', 'fortnight', '1.2.3 h'])(
    'refused: “%s”',
    (text) => {
      expect(read(text)).toContain(`found “${text}”`);
    },
  );
});

test('something to show is added, and its actual period and error are told; another wish takes the old one away', () => {
  const movement = movementOf();
  const arbor = movement.arbors[1]?.id;
  if (!arbor) throw new Error('the scene has two arbors');
  const outcome = readWanted('sidereal day', CONSTANTS);
  if (outcome.kind === 'refused') throw new Error(outcome.says);
  const shows = edited(movement, addShown(movement, arbor, 'Star dial', outcome.wanted));
  const [shown] = shows.indications;
  expect(shown).toMatchObject({ name: 'Star dial', arbor, period: { value: 0.99726956633, unit: 'd' } });
  // 20 leaves turn 40 teeth: half as fast as the drive of 12 h, once in a day.
  const told = turnMovement(shows).indications[0];
  expect(told?.achievedPeriod && periodSays(told.achievedPeriod)).toBe('1 d');
  expect(told?.errorPpm).toBeCloseTo((1 / 0.99726956633 - 1) * 1e6, 3);
  const ratio = edited(shows, editOfWanted(shown?.id ?? '', { ratio: '1/2' })).indications[0];
  expect(ratio).toMatchObject({ ratio: '1/2' });
  expect(ratio).not.toHaveProperty('period');
  expect(ratio).not.toHaveProperty('source');
  expect(ratio && wantedSays(ratio)).toBe('1/2 turns');
  expect(shown && wantedSays(shown)).toBe('0.99726956633 d');
});
