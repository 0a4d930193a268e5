/** What is set down without a name is called as a maker would call it, never by an id. */
import { expect, test } from 'vitest';
import { firstDraft, setDown } from '../../renderer/gestures/setDownDrafts.ts';
import { checkMovement } from '../../solver/clearance/index.ts';
import { applyEdit, emptyMovement } from '../../solver/movement/index.ts';
import type { Movement } from '../../solver/movement/schema.ts';
import { plantMovement } from '../../solver/planting/index.ts';
import { wordsOf } from '../clearance/wordsOf.ts';
import { stateSaid } from '../planting/said.ts';

function withWheelAt(movement: Movement, x: number): Movement {
  const down = setDown('wheel', firstDraft('wheel', movement), { x, y: 0 }, undefined, movement);
  if ('cannot' in down) throw new Error(down.cannot);
  const outcome = applyEdit(movement, { kind: 'several', edits: down.edits });
  if (outcome.kind === 'refused') throw new Error(JSON.stringify(outcome.why));
  return outcome.movement;
}

test('arbors, and wheels in findings, are numbered', () => {
  const movement = withWheelAt(withWheelAt(emptyMovement(), 0), 40);
  expect(movement.arbors.map(({ name }) => name)).toEqual(['Arbor', 'Arbor 2']);
  expect(checkMovement(plantMovement(movement)).map(wordsOf(movement).finding)).toEqual([
    expect.stringMatching(/^Wheel of 60 on Arbor and wheel of 60 on Arbor 2 /),
  ]);
});

test('undo names them so, too', () => {
  const movement = withWheelAt(emptyMovement(), 0);
  const down = setDown('wheel', firstDraft('wheel', movement), { x: 40, y: 0 }, undefined, movement);
  expect('says' in down && down.says).toBe('set down Wheel 2');
});

test('a held place is said to settle a point with two motions', () => {
  const placed = plantMovement(withWheelAt(emptyMovement(), 0));
  expect(stateSaid(placed)).toBe('0 planted, 1 loose. 2 free motions: a held place would settle Arbor.');
});
