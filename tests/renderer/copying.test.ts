/** Copies get names of their own, so that lists and findings tell them from their originals. */
import { expect, test } from 'vitest';
import { partsCopied, pasteEdit } from '../../renderer/commands/copying.ts';
import { offersBetween } from '../../renderer/offers/ruleOffers.ts';
import { applyEdit } from '../../solver/movement/index.ts';
import type { Movement } from '../../solver/movement/schema.ts';
import { plantMovement } from '../../solver/planting/index.ts';
import { movementOfFile } from '../support/movements.ts';

function goingTrain(): Movement {
  return movementOfFile('demo-data/going-train.json');
}

test('a name that is taken gets the next free number, twice over', () => {
  const movement = goingTrain();
  const third = movement.arbors.filter(({ name }) => name === 'Third arbor').map(({ id }) => id);
  const parts = partsCopied(movement, third);
  const once = applyEdit(movement, pasteEdit(movement, parts, 10));
  if (once.kind === 'refused') throw new Error(JSON.stringify(once.why));
  const twice = applyEdit(once.movement, pasteEdit(once.movement, parts, 20));
  if (twice.kind === 'refused') throw new Error(JSON.stringify(twice.why));
  const names = twice.movement.arbors.map(({ name }) => name);
  expect(names.filter((name) => name?.startsWith('Third arbor'))).toEqual([
    'Third arbor',
    'Third arbor 2',
    'Third arbor 3',
  ]);
});

test('a rule that is kept is not offered again, the others are', () => {
  const movement = goingTrain();
  const pair = movement.arbors.filter(({ id }) => id === 'third' || id === 'escape').map(({ id }) => id);
  const kinds = offersBetween(plantMovement(movement), pair, String).map(({ rule }) => rule.kind);
  expect(kinds).not.toContain('depth');
  expect(kinds).toContain('distance');
});
