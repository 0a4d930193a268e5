/** What is said of contested places: those whose rules disagree, and those that only hang on them. */
import { expect, test } from 'vitest';
import type { PointId } from '../../solver/movement/ids.ts';
import { applyEdit, type Edit, emptyMovement } from '../../solver/movement/index.ts';
import type { Movement } from '../../solver/movement/schema.ts';
import { plantMovement } from '../../solver/planting/index.ts';
import { contestedSays } from '../../solver/words/planting/index.ts';

/** A and B held 57 apart; P wants 20 and 20 from them; Q is struck from P and A. Our own scenario. */
function apart(): Movement {
  const arbors: Edit[] = Object.entries({ A: [0, 0], B: [57, 0], P: [28, 5], Q: [10, 30] }).map(([id, at]) => ({
    kind: 'add',
    to: 'arbors',
    item: { id, at: at as [number, number] }, // pairs, written above
  }));
  const rules: Edit[] = [
    { kind: 'add', to: 'rules', item: { id: 'a', kind: 'held', point: 'A', at: [0, 0] } },
    { kind: 'add', to: 'rules', item: { id: 'b', kind: 'held', point: 'B', at: [57, 0] } },
    { kind: 'add', to: 'rules', item: { id: '1', kind: 'distance', points: ['A', 'P'], length: 20 } },
    { kind: 'add', to: 'rules', item: { id: '2', kind: 'distance', points: ['B', 'P'], length: 20 } },
    { kind: 'add', to: 'rules', item: { id: '3', kind: 'distance', points: ['P', 'Q'], length: 30 } },
    { kind: 'add', to: 'rules', item: { id: '4', kind: 'distance', points: ['A', 'Q'], length: 30 } },
  ];
  const outcome = applyEdit(emptyMovement(), { kind: 'several', edits: [...arbors, ...rules] });
  if (outcome.kind !== 'edited') throw new Error(JSON.stringify(outcome.why));
  return outcome.movement;
}

test('only the place whose rules disagree is said to disagree', () => {
  const placed = plantMovement(apart());
  const says = (id: string): string => contestedSays(placed, id as PointId, { name: (each) => each }); // ids of the movement above
  expect(placed.places.get('Q' as PointId)?.state).toBe('contested');
  expect(says('P')).toBe('Contested: its rules disagree.');
  expect(says('Q')).toBe('Contested: its own rules hold, but it is placed from a contested place, P.');
});
