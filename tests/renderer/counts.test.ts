/** The counts view without a window: fields read or refused, what a taken train brings with it, own periods. */
import { describe, expect, it } from 'vitest';
import {
  blankForm,
  type CountsForm,
  jointOptionsOf,
  optionsOf,
  periodOfArbor,
  statedPeriod,
} from '../../renderer/counts/countsForm.ts';
import { readSize, takeTrains } from '../../renderer/counts/layOutForm.ts';
import { addOwn, allConstants, removeOwn } from '../../renderer/counts/ownConstants.ts';
import { readKit, USUAL_KIT_TEXT } from '../../renderer/cutting/dividingKit.ts';
import { applyEdit, emptyMovement, writeMovement } from '../../solver/movement/index.ts';
import type { Movement } from '../../solver/movement/schema.ts';
import { plantMovement } from '../../solver/planting/index.ts';
import { CONSTANTS, readPeriod } from '../../solver/train/counts/index.ts';
import { findCounts } from '../../solver/train/counts/searchCounts.ts';
import { turnMovement } from '../../solver/train/index.ts';
import { speakerOf } from '../../solver/words/index.ts';
import { movementOfText } from '../support/movements.ts';

const kit = readKit(USUAL_KIT_TEXT);
const around = { constants: CONSTANTS, kit: kit.kind === 'kit' ? kit.kit : undefined, size: { module: 0.8 } };
const formWith = (set: Partial<CountsForm>): CountsForm => ({ ...blankForm(emptyMovement()), ...set });
function optionsFor(set: Partial<CountsForm>) {
  const read = optionsOf(formWith(set), around);
  if ('problems' in read) throw new Error(read.problems.map(({ says }) => says).join('\n'));
  return read.options;
}
function edited(movement: Movement, edit: Parameters<typeof applyEdit>[1]): Movement {
  const outcome = applyEdit(movement, edit);
  if (outcome.kind === 'refused') throw new Error(JSON.stringify(outcome.why));
  return outcome.movement;
}

describe('the form', () => {
  it('finds the gear train of Sandgren 1990', () => {
    // Four gears of 12 to 60 for 1/6.931: 16 x 19 / (43 x 49), unique. E. Sandgren, "Nonlinear integer and discrete
    // programming in mechanical design optimization", 1990 (from memory; confirmed by exhaustive search).
    const found = findCounts(optionsFor({ from: '1 h', to: '6.931 h', stages: '2', leaves: '12-60', teeth: '12-60' }));
    expect(found.kind === 'found' && found.rows[0]?.ratio).toEqual({ n: 2107n, d: 304n });
  });

  it('tells every field that cannot be read, at once', () => {
    const read = optionsOf(
      formWith({ from: 'soon', stages: 'two', largestPrime: '-3', onHand: '60 x', nearest: 'wide' }),
      around,
    );
    const fields = 'problems' in read ? read.problems.map(({ field }) => field).sort() : [];
    expect(fields).toEqual(['from', 'largestPrime', 'nearest', 'onHand', 'stages']);
  });

  it('keeps to counts that the plates divide', () => {
    const { divisions } = optionsFor({ divisions: 'plain', teeth: '20-60' });
    // 53 and 59 are primes without a circle of their own among 15 to 49; 51 goes on 17 with a head of 60 (60/51 = 20/17).
    // Source of the circles: plate set A, US Army OD1644.
    expect(Array.isArray(divisions) && divisions.includes(53)).toBe(false);
    expect(Array.isArray(divisions) && divisions.includes(59)).toBe(false);
    expect(Array.isArray(divisions) && divisions.includes(51)).toBe(true);
    expect(Array.isArray(divisions) && divisions.includes(60)).toBe(true);
  });

  it('reads several hands, and the hand whose period is none', () => {
    const wishes = [
      { name: 'Moon', period: 'synodicMonth', stages: 2 as const },
      { name: 'Tide', period: 'now and then', stages: 1 as const },
    ];
    const read = jointOptionsOf(formWith({}), 1, wishes, around);
    expect('problems' in read && read.problems.map(({ field }) => field)).toEqual(['wish1']);
  });

  it('reads sizes and periods as makers write them', () => {
    expect(readSize('0,8')).toEqual({ module: 0.8 });
    expect(readSize('module 1.25')).toEqual({ module: 1.25 });
    expect(readSize('32 dp')).toEqual({ diametralPitch: 32 });
    expect(readSize('big')).toBeUndefined();
    expect(readSize('0')).toBeUndefined();
    expect(statedPeriod('12 h')).toEqual({ period: { value: 12, unit: 'h' } });
    expect(statedPeriod('synodicMonth')?.period).toEqual({ value: 29.530588853, unit: 'd' });
    expect(statedPeriod('86400/7 s')).toBeUndefined();
  });
});

describe('taking a train', () => {
  const search = () => {
    const found = findCounts(optionsFor({ from: '12 h', to: '10 d', stages: '2' }));
    const train = found.kind === 'found' ? found.rows[0]?.trains[0] : undefined;
    if (!train) throw new Error('no train was found for 20 to 1');
    return train;
  };

  it('brings wheels, depths, the drive and what the last arbor is to show, in one edit', () => {
    const made = takeTrains(
      emptyMovement(),
      { size: '32 dp', form: 'cycloidal', start: '', name: 'Decade' },
      { branches: [{ train: search(), name: 'Decade', period: '10 d' }] },
      { from: '12 h', constants: CONSTANTS, at: [5, 6] },
    );
    if (made.kind === 'refused') throw new Error(made.says);
    const movement = edited(emptyMovement(), made.edit);
    expect(movement.wheels.every(({ size, form }) => 'diametralPitch' in size && form === 'cycloidal')).toBe(true);
    expect(movement.arbors[0]?.at).toEqual([5, 6]);
    const turning = turnMovement(movement);
    expect(turning.indications.map(({ id, errorPpm }) => [speakerOf(movement).indication(id), errorPpm])).toEqual([
      ['Decade', 0],
    ]);
    expect(plantMovement(movement).disagreements).toEqual([]);
    // From its last arbor the next train starts with the exact period of that arbor.
    const last = made.arbors.at(-1) ?? '';
    expect(readPeriod(periodOfArbor(turning, last) ?? '')).toEqual({ n: 864_000n, d: 1n });
  });

  it('refuses a size that is none', () => {
    const made = takeTrains(
      emptyMovement(),
      { size: 'fine', form: 'involute', start: '', name: '' },
      { branches: [{ train: search(), name: '', period: '10 d' }] },
      { from: '12 h', constants: CONSTANTS, at: [0, 0] },
    );
    expect(made.kind === 'refused' && made.says).toContain('0.8');
  });
});

describe('own periods', () => {
  const own = { id: 'marketWeek', name: 'Market week', value: '8', unit: 'd' as const, source: 'our own example' };

  it('are kept in the movement, through saving, and can be dropped', () => {
    const added = addOwn(emptyMovement(), own);
    if (added.kind === 'refused') throw new Error(added.says);
    const movement = edited(emptyMovement(), added.edit);
    const again = movementOfText(writeMovement(movement));
    expect(again.constants).toEqual([own]);
    expect(allConstants(again).at(-1)).toMatchObject({ id: 'marketWeek', group: 'own' });
    expect(readPeriod('marketWeek', allConstants(again))).toEqual({ n: 691_200n, d: 1n });
    expect(edited(again, removeOwn(again, 'marketWeek')).constants).toBeUndefined();
  });

  it('are refused without a value, a source or a short name', () => {
    for (const wrong of [{ value: 'long' }, { source: ' ' }, { id: 'market week' }]) {
      expect(addOwn(emptyMovement(), { ...own, ...wrong }).kind).toBe('refused');
    }
  });
});
