import { describe, expect, test } from 'vitest';
import {
  applyEdit,
  commit,
  type Edit,
  emptyMovement,
  freshId,
  type History,
  redo,
  startHistory,
  undo,
} from '../../solver/movement/index.ts';
import type { Movement } from '../../solver/movement/schema.ts';
import { refusalSays, speakerOf } from '../../solver/words/index.ts';
import { movementOfText } from '../support/movements.ts';
import { sampleDocument } from './sampleMovement.ts';

function sample(): Movement {
  return movementOfText(JSON.stringify(sampleDocument()));
}

function after(movement: Movement, edit: Edit): Movement {
  const result = applyEdit(movement, edit);
  if (result.kind === 'refused') throw new Error(JSON.stringify(result.why));
  return result.movement;
}

function refusal(edit: Edit): string {
  const result = applyEdit(sample(), edit);
  return result.kind === 'refused' ? refusalSays(result, speakerOf(sample())) : 'edited';
}

describe('edits', () => {
  test('what stands at one place moves together, and has one recorded crossing', () => {
    const base = after(sample(), { kind: 'add', to: 'marks', item: { id: 'dot', at: [7, 7] } });
    const joined = after(base, {
      kind: 'add',
      to: 'rules',
      item: { id: 'same', kind: 'samePlace', points: ['dot', 'centre'] },
    });
    const placesOf = (movement: Movement) =>
      Object.fromEntries([...movement.arbors, ...movement.marks].map(({ id, at }) => [id, at]));
    const before = placesOf(joined);
    const moved = placesOf(after(joined, { kind: 'move', places: [{ id: 'pipe', at: [3, 4] }] }));
    expect(moved).toEqual({ ...before, pipe: [3, 4], centre: [3, 4], dot: [3, 4] });
    const apart: Edit = {
      kind: 'move',
      places: [
        { id: 'pipe', at: [3, 4] },
        { id: 'dot', at: [5, 6] },
      ],
    };
    expect(placesOf(after(joined, apart))).toMatchObject({ pipe: [3, 4], dot: [5, 6] });

    const crossing = { from: 'third', to: 'fourth', side: 'left' } as const;
    const first = after(joined, { kind: 'setCrossing', point: 'centre', crossing });
    const second = after(first, { kind: 'setCrossing', point: 'dot', crossing: { ...crossing, side: 'right' } });
    const crossings = [...second.arbors, ...second.marks].flatMap(({ id, crossing: own }) =>
      own ? [[id, own.side]] : [],
    );
    expect(crossings.filter(([id]) => id === 'dot' || id === 'centre' || id === 'pipe')).toEqual([['dot', 'right']]);
  });

  test('an added item comes with its defaults, at the place asked for', () => {
    const movement = after(sample(), { kind: 'add', to: 'arbors', item: { id: 'sixth', at: [1, 2] }, at: 1 });
    expect(movement.arbors.map(({ id }) => id)).toEqual(['centre', 'sixth', 'pipe', 'third', 'fourth', 'fifth']);
    expect(movement.arbors[1]).toMatchObject({ diameter: 2, endShake: 0, bearings: [] });
  });

  test('a removed arbor takes along what hangs on it, and the rest forgets it', () => {
    const movement = after(sample(), { kind: 'remove', ids: ['centre'] });
    expect(movement.wheels.map(({ id }) => id)).toEqual(['leaves', 'second', 'ring']);
    expect(movement.rules).toEqual([]);
    expect(movement.drive).toBeUndefined();
    expect(movement.arbors.find(({ id }) => id === 'pipe')).not.toHaveProperty('ridesOn');
    expect(movement.arbors.find(({ id }) => id === 'pipe')).not.toHaveProperty('pipeBore');
    expect(movement.arbors.find(({ id }) => id === 'third')).not.toHaveProperty('crossing');
    expect(movement.posts[0]).not.toHaveProperty('slidesAbout');
    expect(movement.couplings.map(({ id }) => id)).toEqual(['c-worm', 'c-step']);
    expect(movement.readings).toEqual([]);
    expect(movement.accepted).toEqual([]);
  });

  describe('a removed bearing takes its readings along, and those of the others stay theirs', () => {
    const bearing = { bore: 2.05, pivot: 2, length: 3 };
    const read = (id: string, index: number, kind = 'bore') => ({
      kind: 'add' as const,
      to: 'readings' as const,
      item: { id, kind: kind as 'bore', of: ['centre'], bearing: index, value: 2.06 },
    });
    const three = after(sample(), {
      kind: 'several',
      edits: [
        {
          kind: 'change',
          id: 'centre',
          set: { bearings: [{ ...bearing, plate: 'base' }, bearing, { ...bearing, pivot: 1.5 }] },
        },
        read('first', 0),
        read('middle', 1),
        read('pivot', 2, 'diameter'),
        { kind: 'add', to: 'readings', item: { id: 'body', kind: 'diameter', of: ['centre'], value: 3 } },
      ],
    });
    const left = (movement: Movement) =>
      movement.readings.flatMap(({ id, bearing: of }) => (id === 'm1' ? [] : [[id, of]]));

    test.each([
      [
        0,
        [
          ['middle', 0],
          ['pivot', 1],
          ['body', undefined],
        ],
      ],
      [
        1,
        [
          ['first', 0],
          ['pivot', 1],
          ['body', undefined],
        ],
      ],
      [
        2,
        [
          ['first', 0],
          ['middle', 1],
          ['body', undefined],
        ],
      ],
    ])('bearing %i', (index, readings) => {
      const next = after(three, { kind: 'removeBearing', arbor: 'centre', bearing: index });
      expect(left(next)).toEqual(readings);
      expect(next.arbors[0]?.bearings).toEqual(three.arbors[0]?.bearings.filter((_, i) => i !== index));
    });

    test('with the plate that it is in', () => {
      expect(left(after(three, { kind: 'remove', ids: ['base'] }))).toEqual([
        ['middle', 0],
        ['pivot', 1],
        ['body', undefined],
      ]);
    });

    test('one that is not there is refused', () => {
      expect(refusal({ kind: 'removeBearing', arbor: 'centre', bearing: 1 })).toBe(
        'Arbor 1 has 1 bearing: nothing to remove.',
      );
      expect(refusal({ kind: 'removeBearing', arbor: 'nobody', bearing: 0 })).toContain('“nobody”');
    });
  });

  test('a removed reading leaves its value in the depth', () => {
    const rule = after(sample(), { kind: 'remove', ids: ['m1'] }).rules[1];
    expect(rule).toMatchObject({ use: 'measured', measured: { value: 28.9, plusMinus: 0.02 } });
    expect(rule?.kind === 'depth' && rule.measured).not.toHaveProperty('reading');
  });

  test('a rule about equal radii loses one point and stays while two are left', () => {
    const three = after(sample(), { kind: 'change', id: 'r-radii', set: { points: ['third', 'fourth', 'fifth'] } });
    const two = after(three, { kind: 'remove', ids: ['fourth'] });
    expect(two.rules.find(({ id }) => id === 'r-radii')).toMatchObject({ points: ['third', 'fifth'] });
    expect(after(two, { kind: 'remove', ids: ['third'] }).rules.some(({ id }) => id === 'r-radii')).toBe(false);
  });

  test('a new id is followed by everything that names the old one', () => {
    const movement = after(sample(), { kind: 'rename', from: 'centre', to: 'middle' });
    // As a value; the same word is also the name of a field.
    const times = (document: unknown, id: string): number =>
      JSON.stringify(document).split(new RegExp(`"${id}"(?!:)`)).length - 1;
    expect(times(movement, 'centre')).toBe(0);
    expect(times(movement, 'middle')).toBe(times(sample(), 'centre'));
    expect(times(sample(), 'centre')).toBeGreaterThan(10);
  });

  test('a pasted sub-train has fresh ids, rules of its own and ties to what was not copied', () => {
    const document = sampleDocument();
    const parts = {
      arbors: [document.arbors[2]],
      wheels: [document.wheels[1]],
      rules: [document.rules[1], document.rules[5]],
    };
    const movement = after(sample(), { kind: 'paste', parts, by: [5, -5] });
    expect(movement.arbors.at(-1)).toMatchObject({
      id: 'third-2',
      at: [25, 5],
      crossing: { from: 'centre', to: 'corner' },
    });
    expect(movement.wheels.at(-1)).toMatchObject({ id: 'leaves-2', arbor: 'third-2' });
    expect(movement.rules.at(-2)).toMatchObject({ id: 'r-depth-2', wheels: ['great', 'leaves-2'] });
    expect(movement.rules.at(-1)).toMatchObject({ id: 'r-opposite-2', point: 'fourth', of: 'third-2' });
  });

  test('a held depth keeps what was measured', () => {
    const rule = after(sample(), { kind: 'setValue', rule: 'r-depth', value: 28.8 }).rules[1];
    expect(rule).toMatchObject({ use: 'held', held: 28.8, measured: { value: 28.9, reading: 'm1' } });
  });

  test('a made state replaces the one before it, and keeps where it was drilled before', () => {
    const [first] = sample().made;
    const { point: _, ...was } = first ?? { point: '' };
    const movement = after(sample(), { kind: 'setMade', made: { point: 'dial', state: 'marked' } });
    expect(movement.made).toEqual([{ point: 'dial', state: 'marked', earlier: [was] }]);
    const again = after(movement, { kind: 'setMade', made: { point: 'dial', state: 'drilled', at: [1, -40] } });
    expect(again.made).toEqual([{ point: 'dial', state: 'drilled', at: [1, -40], earlier: [was] }]);
    // The same place with another day is the same hole.
    const same = { point: 'dial', state: 'drilled', at: [1, -40] as [number, number], date: '2026-04-01' } as const;
    expect(after(again, { kind: 'setMade', made: same }).made).toEqual([{ ...same, earlier: [was] }]);
    expect(after(movement, { kind: 'clearMade', point: 'dial' }).made).toEqual([]);
  });

  test('an accepted finding is replaced and withdrawn whatever the order of its parts', () => {
    const accepted = { finding: 'tooClose', parts: ['p1', 'great'], gap: 0.3, reason: 'measured' };
    const movement = after(sample(), { kind: 'accept', accepted });
    expect(movement.accepted).toEqual([accepted]);
    expect(after(movement, { kind: 'withdraw', finding: 'tooClose', parts: ['great', 'p1'] }).accepted).toEqual([]);
  });

  test('the description may be changed and the lists may not', () => {
    const movement = after(sample(), {
      kind: 'describe',
      set: { display: { unit: 'inch' }, revision: 'B' },
      unset: ['drive'],
    });
    expect(movement).toMatchObject({ display: { unit: 'inch', decimals: 3 }, revision: 'B' });
    expect(movement).not.toHaveProperty('drive');
    expect(refusal({ kind: 'describe', set: { rules: [] } })).toContain('Rules of the movement');
    expect(refusal({ kind: 'describe', set: { version: 7 } })).toContain('Version of the movement');
  });

  test('several edits pass together through a state that none would leave', () => {
    const swap: Edit = {
      kind: 'several',
      edits: [
        { kind: 'change', id: 'great', set: { arbor: 'third' } },
        { kind: 'change', id: 'leaves', set: { arbor: 'centre' } },
      ],
    };
    expect(refusal({ kind: 'change', id: 'great', set: { arbor: 'third' } })).toContain('two wheels on different axes');
    expect(after(sample(), swap).wheels[0]?.arbor).toBe('third');
  });

  test.each<[string, Edit, string]>([
    ['a taken id', { kind: 'add', to: 'arbors', item: { id: 'great', at: [0, 0] } }, 'a second time'],
    ['a taken new id', { kind: 'rename', from: 'centre', to: 'great' }, 'already'],
    ['an unknown id', { kind: 'rename', from: 'center', to: 'middle' }, 'near in spelling: “arbor 1”'],
    ['an id changed by the way', { kind: 'change', id: 'centre', set: { id: 'middle' } }, 'renaming'],
    ['too few teeth', { kind: 'change', id: 'great', set: { teeth: 2 } }, '4 or more'],
    ['a length of nothing', { kind: 'setValue', rule: 'r-distance', value: 0 }, 'or more'],
    ['a length that is no number', { kind: 'setValue', rule: 'r-distance', value: Number.NaN }, 'length'],
    ['a value where there is none', { kind: 'setValue', rule: 'r-line', value: 3 }, 'no value of its own'],
    ['a measure of a distance', { kind: 'setMeasured', rule: 'r-distance', value: 3 }, 'no depth'],
    ['a wheel moved by itself', { kind: 'move', places: [{ id: 'great', at: [0, 0] }] }, 'move the arbor'],
    ['a pipe on its own pipe', { kind: 'change', id: 'centre', set: { ridesOn: 'pipe' } }, 'ring'],
    ['a distance at one place', { kind: 'change', id: 'corner', set: { at: [] } }, 'at'],
    ['a place outside the list', { kind: 'reorder', id: 'centre', to: 9 }, 'no place 9'],
    ['nothing to remove', { kind: 'remove', ids: ['nobody'] }, 'Nothing in this movement'],
    ['nothing to paste', { kind: 'paste', parts: {} }, 'nothing to paste'],
    [
      'one bad edit of several',
      {
        kind: 'several',
        edits: [
          { kind: 'remove', ids: ['pipe'] },
          { kind: 'remove', ids: ['pipe'] },
        ],
      },
      '“pipe”',
    ],
  ])('%s is refused in words', (_, edit, words) => {
    expect(refusal(edit)).toContain(words);
  });
});

describe('undo', () => {
  const deed = (label: string, edit: Edit, timeMs: number, group?: string) => ({
    label,
    edit,
    timeMs,
    selectionBefore: ['centre'],
    selectionAfter: [label],
    ...(group === undefined ? {} : { group }),
  });
  const done = (history: History, next: ReturnType<typeof deed>): History => {
    const result = commit(history, next);
    if (result.kind === 'refused') throw new Error(JSON.stringify(result.why));
    return result.history;
  };
  const nudge = (x: number): Edit => ({ kind: 'move', places: [{ id: 'third', at: [x, 0] }] });

  test('brings back the movement and what was selected', () => {
    const start = startHistory(sample());
    const history = done(start, deed('remove', { kind: 'remove', ids: ['centre'] }, 0));
    const back = undo(history);
    expect(back?.history.movement).toEqual(start.movement);
    expect(back?.selection).toEqual(['centre']);
    expect(back && redo(back.history)?.selection).toEqual(['remove']);
  });

  test('a row of nudges is one step, a pause or another deed begins a new one', () => {
    let history = startHistory(sample());
    for (const [x, time] of [
      [1, 0],
      [2, 300],
      [3, 900],
      [4, 5000],
    ] as const) {
      history = done(history, deed('nudge', nudge(x), time, 'nudge third'));
    }
    expect(history.done).toHaveLength(2);
    const back = undo(history);
    expect(back?.history.movement.arbors[2]?.at).toEqual([3, 0]);
    expect(back && undo(back.history)?.history.movement).toEqual(sample());
  });

  test('a new deed forgets what was undone; a deed that changes nothing and a refused one leave no trace', () => {
    const one = done(startHistory(sample()), deed('one', nudge(1), 0));
    const back = undo(one)?.history ?? one;
    expect(done(back, deed('two', nudge(2), 1)).undone).toEqual([]);
    expect(done(one, deed('nothing', { kind: 'several', edits: [] }, 2))).toBe(one);
    expect(commit(one, deed('bad', { kind: 'remove', ids: ['nobody'] }, 3)).kind).toBe('refused');
  });

  test('an empty history has nothing to undo or redo', () => {
    expect(undo(startHistory(emptyMovement()))).toBeUndefined();
    expect(redo(startHistory(emptyMovement()))).toBeUndefined();
  });
});

describe('fresh ids', () => {
  test('are readable, sound and never taken', () => {
    expect(freshId(new Set(), 'seconds hand')).toBe('seconds-hand');
    expect(freshId(new Set(['a', 'a-2']), 'a')).toBe('a-3');
    expect(freshId(new Set(['a', 'a-2']), 'a-2')).toBe('a-3');
    expect(freshId(new Set(), '  ')).toBe('part-2');
    expect(freshId(new Set(['x'.repeat(64)]), 'x'.repeat(64))).toHaveLength(58);
  });
});
