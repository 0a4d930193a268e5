/** From where a place is told as a radius and an angle. */
import { describe, expect, test } from 'vitest';
import { polarOf } from '../../renderer/slips/polarOf.ts';
import type { PointId } from '../../solver/movement/ids.ts';
import { plantMovement } from '../../solver/planting/index.ts';
import { movementOfParts } from '../support/movements.ts';

const plate = {
  id: 'plate',
  levels: { from: -2, to: 0 },
  outline: {
    kind: 'path',
    vertices: [
      { x: 0, y: 0 },
      { x: 60, y: 0 },
      { x: 60, y: 40 },
      { x: 0, y: 40 },
    ],
  },
};

function told(rules: readonly object[], plates: readonly object[], point: string) {
  const movement = movementOfParts({
    arbors: [
      { id: 'a', at: [10, 5] },
      { id: 'b', at: [40, 5] },
      { id: 'c', at: [25, 30] },
    ],
    plates,
    rules,
  });
  const id = point as PointId; // ids of the movement above
  return polarOf(
    plantMovement(movement),
    id,
    movement.rules.filter((rule) => 'point' in rule && rule.point === id),
  );
}

const held = { id: 'h', kind: 'held', point: 'a', at: [10, 5] };
const radius = { id: 'r', kind: 'radius', point: 'c', centre: 'b', length: 29 };

describe('the centre that a place is told about', () => {
  test('is that of its own radius rule before all else', () => {
    expect(told([held, radius], [plate], 'c')).toMatchObject({ from: 'b' });
  });

  test('is the first held point for all others', () => {
    expect(told([held, radius], [plate], 'b')).toEqual({ x: 10, y: 5, from: 'a' });
    expect(told([held, radius], [plate], 'a')).toBeUndefined();
  });

  test('is the middle of the first plate where nothing is held', () => {
    expect(told([], [plate], 'c')).toEqual({ x: 30, y: 20 });
    expect(told([{ ...held, leaveOut: true }], [plate], 'c')).toEqual({ x: 30, y: 20 });
    expect(told([], [], 'c')).toBeUndefined();
  });
});
