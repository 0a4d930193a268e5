/** How much is shown about what is chosen: a post without a wheel with its surroundings. */
import { expect, test } from 'vitest';
import { chosenBounds } from '../../renderer/state/derive/chosenBounds.ts';
import { plantMovement } from '../../solver/planting/index.ts';
import { movementOfParts } from '../support/movements.ts';

test('a post is shown with at least its own diameter on every side', () => {
  const movement = movementOfParts({ posts: [{ id: 'p', at: [20, 10], diameter: 9, levels: { from: 0, to: 20 } }] });
  const [left = 0, low = 0, right = 0, high = 0] = chosenBounds(['p'], plantMovement(movement), new Map()) ?? [];
  expect([(left + right) / 2, (low + high) / 2]).toEqual([20, 10]);
  expect((right - left) / 2).toBeGreaterThanOrEqual(4.5 + 9);
});
