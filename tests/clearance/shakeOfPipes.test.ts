import { describe, expect, it } from 'vitest';
import { checkMovement, shakeOf } from '../../solver/clearance/index.ts';
import type { ArborId } from '../../solver/movement/ids.ts';
import { plantMovement } from '../../solver/planting/index.ts';
import { sceneOf } from './scenes.ts';

/** A spindle in a plate with two pipes on it, one on the other, each on two bushes. */
const bushes = (bore: number, pivot: number) => [
  { kind: 'bush', at: 10, bore, pivot, length: 4 },
  { kind: 'bush', at: 40, bore, pivot, length: 4 },
];
const scene = (play: number) =>
  sceneOf({
    arbors: [
      { id: 'S', at: [0, 0], diameter: 3, levels: { from: 0, to: 50 }, bearings: bushes(3.1, 3) },
      {
        id: 'A',
        at: [0, 0],
        diameter: 5,
        levels: { from: 10, to: 44 },
        ridesOn: 'S',
        pipeBore: 3 + play,
        bearings: bushes(3 + play, 3),
      },
      {
        id: 'B',
        at: [0, 0],
        diameter: 7,
        levels: { from: 10, to: 44 },
        ridesOn: 'A',
        pipeBore: 5 + play,
        bearings: bushes(5 + play, 5),
      },
    ],
    rules: [{ id: 'h', kind: 'held', point: 'S', at: [0, 0] }],
  });

describe('shake of pipes on one axis', () => {
  const shake = shakeOf(scene(0.06));
  const [s, a, b] = ['S', 'A', 'B'] as ArborId[];
  if (!s || !a || !b) throw new Error('three arbors');

  it('against the case it adds up from the inside: 0.05, then 0.03 for each pipe', () => {
    expect(shake.aside(s, 20)).toBeCloseTo(0.05, 12);
    expect(shake.aside(a, 20)).toBeCloseTo(0.08, 12);
    expect(shake.aside(b, 20)).toBeCloseTo(0.11, 12);
  });

  it('against each other only the plays between the two count', () => {
    expect(shake.between(a, b, 20)).toBeCloseTo(0.03, 12);
    expect(shake.between(s, b, 20)).toBeCloseTo(0.06, 12);
    expect(shake.between(b, s, 20)).toBeCloseTo(0.06, 12);
  });

  it('so a pipe that fits the one inside it does not foul it', () => {
    expect(checkMovement(plantMovement(scene(0.1)))).toEqual([]);
  });

  it('a bearing in a plate bounds what the pipes inside would let a pipe do', () => {
    const movement = sceneOf({
      plates: [{ id: 'plate', outline: { kind: 'circle', centre: [0, 0], radius: 40 }, levels: { from: 20, to: 30 } }],
      arbors: [
        { id: 'S', at: [0, 0], diameter: 3, levels: { from: 0, to: 50 }, bearings: bushes(3.1, 3) },
        {
          id: 'A',
          at: [0, 0],
          diameter: 5,
          levels: { from: 10, to: 44 },
          ridesOn: 'S',
          pipeBore: 3.4,
          bearings: [...bushes(3.06, 3), { plate: 'plate', bore: 5.02, pivot: 5, length: 10 }],
        },
      ],
      rules: [{ id: 'h', kind: 'held', point: 'S', at: [0, 0] }],
    });
    expect(shakeOf(movement).aside('A' as ArborId, 25)).toBeCloseTo(0.01, 12);
    // Far above, the lean in the plate's ten millimetres decides: 0.01 at both of its ends, one to either side.
    expect(shakeOf(movement).aside('A' as ArborId, 100)).toBeCloseTo(0.01 * (1 + (2 * 70) / 10), 12);
  });
});
