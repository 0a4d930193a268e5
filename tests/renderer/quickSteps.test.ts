/** Which movements have their steps of marking out worked out between two frames. */
import { describe, expect, it } from 'vitest';
import { hasQuickSteps } from '../../renderer/frame/quickSteps.ts';
import { plantMovement } from '../../solver/planting/index.ts';
import { longTrain } from '../speed/longTrain.ts';
import { movementOfText } from '../support/movements.ts';

/** A long train; `closed` without the rule that starts it and with its far end aimed at instead: placed as one block. */
function train(arbors: number, closed: boolean) {
  const document = JSON.parse(longTrain(arbors, 5));
  if (closed) {
    const [x, y] = document.arbors[arbors - 6].at;
    document.rules = document.rules.filter(({ id }: { id: string }) => id !== 'start');
    const angle = (Math.atan2(y, x) * 180) / Math.PI;
    document.rules.push({ id: 'aim', kind: 'bearing', point: `a${arbors - 6}`, centre: 'a0', angle });
  }
  const movement = movementOfText(JSON.stringify(document));
  return plantMovement(movement);
}

describe('steps of marking out in the strip', () => {
  it.each([
    ['a long train', 300, false, true],
    ['a longer train', 301, false, false],
    ['a block of some points', 60, true, true],
    ['a block of many points', 100, true, false],
  ])('%s', (_, arbors, closed, quick) => {
    const placed = train(arbors, closed);
    expect(placed.order.some(({ kind }) => kind === 'block')).toBe(closed);
    expect(hasQuickSteps(placed)).toBe(quick);
  });
});
