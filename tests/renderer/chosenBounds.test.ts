/** How much is shown about what is chosen: a post without a wheel with its surroundings. */
import { expect, test } from 'vitest';
import { chosenBounds } from '../../renderer/state/derive/chosenBounds.ts';
import { readMovement } from '../../solver/movement/index.ts';
import { plantMovement } from '../../solver/planting/index.ts';

test('a post is shown with at least its own diameter on every side', () => {
  const reading = readMovement(
    JSON.stringify({
      format: 'depthwright-movement',
      version: 1,
      posts: [{ id: 'p', at: [20, 10], diameter: 9, levels: { from: 0, to: 20 } }],
    }),
  );
  if (reading.kind === 'problems') throw new Error(reading.problems[0]?.says);
  const [left = 0, low = 0, right = 0, high = 0] =
    chosenBounds(['p'], plantMovement(reading.movement), new Map()) ?? [];
  expect([(left + right) / 2, (low + high) / 2]).toEqual([20, 10]);
  expect((right - left) / 2).toBeGreaterThanOrEqual(4.5 + 9);
});
