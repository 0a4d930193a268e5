/** What depends on the train alone is kept while only places change, and made anew as soon as anything else does. */
import { describe, expect, it } from 'vitest';
import { trainRows } from '../../renderer/frame/trainOrder.ts';
import { forSame } from '../../renderer/state/derive/forSame.ts';
import { keepingTrain, samePartsAs } from '../../renderer/state/derive/keeping.ts';
import { sizesOf } from '../../renderer/state/derive/sizes.ts';
import { applyEdit, type Edit } from '../../solver/movement/index.ts';
import type { Movement } from '../../solver/movement/schema.ts';
import { turnMovement } from '../../solver/train/index.ts';
import { movementOfParts } from '../support/movements.ts';

function read(document: object): Movement {
  return movementOfParts({ title: 't', ...document });
}
function wheel(id: string, arbor: string, teeth: number) {
  return { id, arbor, teeth, size: { module: 0.5 }, form: 'involute', level: 0, thickness: 2 };
}
const movement = read({
  arbors: [
    { id: 'a', at: [0, 0], diameter: 2, collars: [{ diameter: 4, from: 3, to: 5 }] },
    { id: 'b', at: [20, 0], diameter: 2 },
    { id: 'c', at: [20, 20], diameter: 2, ridesOn: 'b' },
    { id: 'x', at: [50, 20], diameter: 2 },
  ],
  wheels: [wheel('w', 'a', 40), wheel('p', 'b', 10), wheel('q', 'c', 30)],
  rules: [{ id: 'd', kind: 'depth', wheels: ['w', 'p'] }],
  drive: { arbor: 'a', period: { value: 1, unit: 'h' } },
});
function after(edit: Edit): Movement {
  const outcome = applyEdit(movement, edit);
  if (outcome.kind !== 'edited') throw new Error(JSON.stringify(outcome.why));
  return outcome.movement;
}

describe('the train of a movement', () => {
  it.each([
    ['an arbor was moved', { kind: 'move', places: [{ id: 'a', at: [1, 2] }] }],
    [
      'a rule that places was added',
      { kind: 'add', to: 'rules', item: { id: 'h', kind: 'held', point: 'a', at: [0, 0] } },
    ],
  ] as [string, Edit][])('is the same where %s', (_, edit) => {
    const keep = keepingTrain();
    expect(keep(movement)).toBe(movement);
    const now = after(edit);
    expect(keep(now)).toBe(movement);
    expect(samePartsAs(now, movement)).toBe(movement);
    // What is told of the train it kept is what would be told of the movement itself.
    expect(sizesOf(keep(now))).toEqual(sizesOf(now));
    expect(turnMovement(keep(now))).toEqual(turnMovement(now));
  });

  it.each([
    ['a count', { kind: 'change', id: 'w', set: { teeth: 41 } }],
    ['a name', { kind: 'change', id: 'a', set: { name: 'Great arbor' } }],
    ['a collar', { kind: 'change', id: 'a', set: { collars: [{ diameter: 5, from: 3, to: 5 }] } }],
    ['a depth', { kind: 'leaveOut', rules: ['d'], leaveOut: true }],
    ['a shared place', { kind: 'add', to: 'rules', item: { id: 's', kind: 'samePlace', points: ['a', 'x'] } }],
    ['the drive', { kind: 'describe', set: { drive: { arbor: 'b', period: { value: 1, unit: 'h' } } } }],
    ['an arbor more', { kind: 'add', to: 'arbors', item: { id: 'e', at: [5, 5], diameter: 1 } }],
    ['a mark more', { kind: 'add', to: 'marks', item: { id: 'm', at: [5, 5] } }],
  ] as [string, Edit][])('is another after a change of %s', (_, edit) => {
    const keep = keepingTrain();
    keep(movement);
    const now = after(edit);
    expect(keep(now)).toBe(now);
    expect(keep(now)).toBe(now);
  });

  it('is listed in order of drive, what rides on an arbor below it', () => {
    const rows = trainRows(movement, turnMovement(movement));
    expect(rows.map(({ arbor, nesting }) => `${arbor.id} ${nesting}`)).toEqual(['a 0', 'b 0', 'c 1', 'x 0']);
  });
});

describe('an answer that is kept', () => {
  it('is given again for the same things, and made anew for others', () => {
    let made = 0;
    const ask = forSame(
      (a: object, b: number) => [a, b],
      (_, b) => {
        made++;
        return b;
      },
    );
    const a = {};
    expect([ask(a, 1), ask(a, 1), ask(a, 2), ask({}, 2)]).toEqual([1, 1, 2, 2]);
    expect(made).toBe(3);
  });
});
