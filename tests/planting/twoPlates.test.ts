/** Drilled in two plates: both places are facts, the axis is the line through them, and nothing is averaged. */
import { describe, expect, test } from 'vitest';
import { depthVerdicts, shakeOf } from '../../solver/clearance/index.ts';
import type { ArborId, RuleId } from '../../solver/movement/ids.ts';
import type { Movement } from '../../solver/movement/schema.ts';
import { plantMovement } from '../../solver/planting/index.ts';
import { arbor, buildMovement, clockWheel, distance, held, placeOf, ruleOf } from './buildMovement.ts';

type Hole = readonly [point: string, plate: string | undefined, at: readonly [number, number]];

/** P from A and B; Q from B and by a depth with P, whose teeth meet at 20 to 22. Plates 3 thick, 40 apart. */
function movementWith(holes: readonly Hole[]): Movement {
  return buildMovement({
    plates: ['base', 'top'].map((id, k) => ({
      id,
      outline: { kind: 'circle' as const, centre: [0, 0] as const, radius: 80 },
      levels: { from: 43 * k, to: 43 * k + 3 },
    })),
    arbors: [
      arbor('A', 0, 0),
      arbor('B', 40, 0),
      arbor('P', 20, 20),
      { ...arbor('pipe', 20, 20), ridesOn: 'P' },
      arbor('Q', 40, 40),
    ],
    wheels: [clockWheel('w', 'P', 60, 0.8, 20), clockWheel('v', 'Q', 10, 0.8, 20)],
    rules: [
      held('a', 'A', 0, 0),
      held('b', 'B', 40, 0),
      distance('ap', 'A', 'P', Math.hypot(20, 20)),
      distance('bp', 'B', 'P', Math.hypot(20, 20)),
      { kind: 'depth', id: 'pq', wheels: ['w', 'v'], use: 'held', held: 28.2 },
      distance('bq', 'B', 'Q', 40),
    ],
    made: holes.map(([point, plate, [x, y]]) => ({
      point,
      state: 'drilled' as const,
      at: [x, y] as [number, number],
      ...(plate && { plate }),
    })),
  });
}

describe('drilled in two plates', () => {
  const movement = movementWith([
    ['P', 'base', [20, 20.02]],
    ['P', 'top', [20.4, 20]],
  ]);
  const placed = plantMovement(movement);
  const slope = { x: 0.4 / 40, y: -0.02 / 40 };
  // The holes face each other at 3 and 43.
  const at = (z: number) => ({ x: 20 + slope.x * (z - 3), y: 20.02 + slope.y * (z - 3) });

  test('the axis stands at the marked face on the line through both places', () => {
    expect(placeOf(placed, 'P').x).toBeCloseTo(at(0).x, 12);
    expect(placeOf(placed, 'P').y).toBeCloseTo(at(0).y, 12);
    expect([placeOf(placed, 'P').state, placeOf(placed, 'pipe').x]).toEqual(['planted', placeOf(placed, 'P').x]);
    expect(placed.disagreements.map(({ cause }) => cause.kind)).not.toContain('set');
  });

  test('is the same whichever hole was noted first', () => {
    const turned = plantMovement({ ...movement, made: [...movement.made].reverse() });
    expect(placeOf(turned, 'P')).toMatchObject({ x: placeOf(placed, 'P').x, y: placeOf(placed, 'P').y });
  });

  test('a depth is read where its teeth meet, everything else at the marked face', () => {
    const q = placeOf(placed, 'Q');
    expect(Math.hypot(q.x - at(21).x, q.y - at(21).y)).toBeCloseTo(28.2, 9);
    const { x, y } = placeOf(placed, 'P');
    expect(ruleOf(placed, 'ap')?.missBy).toBeCloseTo(Math.abs(Math.hypot(x, y) - Math.hypot(20, 20)), 9);
    expect(depthVerdicts(placed).get('pq' as RuleId)?.distance).toBeCloseTo(28.2, 9);
  });

  test('leans by the one number that the check uses', () => {
    const shake = shakeOf(movement);
    const off = shake.standsOff('P' as ArborId, 43);
    const { x, y } = placeOf(placed, 'P');
    expect(x + off.x).toBeCloseTo(20.4, 9);
    expect(y + off.y).toBeCloseTo(20, 9);
  });
});

describe('two places of one axis in one plate', () => {
  test.each([
    ['of the axis and its pipe', ['P', 'base'], ['pipe', 'base']],
    ['of which no plate is told', ['P', undefined], ['pipe', 'top']],
  ] as const)('%s: told with their gap, the first stands', (_, first, second) => {
    const placed = plantMovement(
      movementWith([
        [...first, [20, 20.02]],
        [...second, [20.3, 20]],
      ]),
    );
    const told = placed.disagreements.filter(({ cause }) => cause.kind === 'set');
    expect(told).toHaveLength(1);
    expect(told[0]?.gap).toBeCloseTo(Math.hypot(0.3, 0.02), 9);
    expect(told[0]?.cause).toMatchObject({ implied: expect.arrayContaining([{ kind: 'drilled', point: 'pipe' }]) });
    expect(placeOf(placed, 'P')).toMatchObject({ x: 20, y: 20.02, state: 'planted' });
  });
});
