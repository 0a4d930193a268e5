/**
 * An arbor planted by two depths, a worked example.
 *
 * Source: two depths by hand (SOURCES.md), worked from the triangle's sides alone (x and y by Pythagoras and the cosine
 * rule, in double precision and exact fractions); none of it was computed by the solver. The three wheels are ordinary clock wheels of module 0.8: 64 drives 8, and 60 drives 8.
 */
import { describe, expect, it } from 'vitest';
import type { Movement } from '../../solver/movement/schema.ts';
import { plantMovement } from '../../solver/planting/index.ts';
import { arbor, buildMovement, clockWheel, held, placeOf, type RuleInput, ruleOf } from '../planting/buildMovement.ts';
import { disagreementSaid } from '../planting/said.ts';

const DEGREES = 180 / Math.PI;

interface Change {
  readonly escapeY?: number;
  readonly first?: Partial<Extract<RuleInput, { kind: 'depth' }>>;
  readonly second?: Partial<Extract<RuleInput, { kind: 'depth' }>>;
  readonly left?: boolean;
}

function example({ escapeY = 45, first = {}, second = {}, left = false }: Change = {}): Movement {
  return buildMovement({
    arbors: [arbor('centre', 0, 0), arbor('third', left ? -15 : 15, 20), arbor('escape', 0, escapeY)],
    wheels: [
      clockWheel('centreWheel', 'centre', 64, 0.8, 0),
      clockWheel('thirdPinion', 'third', 8, 0.8, 0),
      clockWheel('thirdWheel', 'third', 60, 0.8, 5),
      clockWheel('escapePinion', 'escape', 8, 0.8, 5),
    ],
    rules: [
      held('datum', 'centre', 0, 0),
      held('top', 'escape', 0, escapeY),
      { kind: 'depth', id: 'first', wheels: ['centreWheel', 'thirdPinion'], ...first },
      { kind: 'depth', id: 'second', wheels: ['thirdWheel', 'escapePinion'], ...second },
    ],
  });
}

describe('two-depth planting', () => {
  it('plants the third arbor at both mirror places, to the printed digits', () => {
    for (const left of [false, true]) {
      const placed = plantMovement(example({ left }));
      const third = placeOf(placed, 'third');
      expect(third.state).toBe('planted');
      expect(third.x).toBeCloseTo(left ? -16.6553 : 16.6553, 5);
      expect(third.y).toBeCloseTo(23.49556, 5);
      expect(third.other?.x).toBeCloseTo(left ? 16.6553 : -16.6553, 5);
      expect(third.other?.y).toBeCloseTo(23.49556, 5);
      expect(Math.hypot(third.x, third.y)).toBeCloseTo(28.8, 9);
    }
    const third = placeOf(plantMovement(example()), 'third');
    expect(Math.atan2(third.y, third.x) * DEGREES).toBeCloseTo(54.6683, 4);
    // 106.910° between the lines of centres: the arcs cross at the same angle, told as its acute supplement.
    expect(180 - (third.crossingAngle ?? 0) * DEGREES).toBeCloseTo(106.91, 3);
  });

  it('sets the calculated depths from the wheels', () => {
    const placed = plantMovement(example());
    expect(ruleOf(placed, 'first')?.length).toBeCloseTo(28.8, 9);
    expect(ruleOf(placed, 'second')?.length).toBeCloseTo(27.2, 9);
  });

  it('plants again by measured depths', () => {
    const before = placeOf(plantMovement(example()), 'third');
    const placed = plantMovement(
      example({
        first: { use: 'measured', measured: { value: 28.86 } },
        second: { use: 'measured', measured: { value: 27.15 } },
      }),
    );
    const third = placeOf(placed, 'third');
    expect(third.x).toBeCloseTo(16.6622, 4);
    expect(third.y).toBeCloseTo(23.5642, 4);
    expect(Math.hypot(third.x, third.y)).toBeCloseTo(28.86, 9);
    expect(Math.atan2(third.y, third.x) * DEGREES).toBeCloseTo(54.7359, 4);
    expect(Math.hypot(third.x - before.x, third.y - before.y)).toBeCloseTo(0.069, 3);
    expect(ruleOf(placed, 'first')).toMatchObject({ measured: 28.86, length: 28.86, role: 'places' });
    expect(ruleOf(placed, 'first')?.calculated).toBeCloseTo(28.8, 9);
    // A held hole moves exactly nothing (practice, section 4, line 1).
    expect(placeOf(placed, 'escape')).toMatchObject({ x: 0, y: 45 });
  });

  it('moves by 0.0523 when one depth grows by 0.05, and says so beforehand', () => {
    const before = placeOf(plantMovement(example()), 'third');
    const after = placeOf(plantMovement(example({ first: { allowance: 0.05 } })), 'third');
    expect(after.x).toBeCloseTo(16.6966, 4);
    expect(after.y).toBeCloseTo(23.5276, 4);
    // The example prints the first-order 0.05 / sin 106.9° = 0.0523; the true shift is 0.00002 less.
    expect(Math.abs(Math.hypot(after.x - before.x, after.y - before.y) - 0.0523)).toBeLessThan(1e-4);
    // 0.01 / sin 106.910° for each depth.
    expect(before.placedBy).toEqual(['first', 'second']);
    for (const moved of before.movedBy) expect(moved).toBeCloseTo(0.01 / Math.sin(106.91 / DEGREES), 7);
  });

  it('tells a flat crossing by what it does', () => {
    const before = placeOf(plantMovement(example({ escapeY: 55.5 })), 'third');
    expect(before.x).toBeCloseTo(3.7317, 4);
    expect(before.y).toBeCloseTo(28.5572, 4);
    const grown = example({ escapeY: 55.5, first: { allowance: 0.05 }, second: { allowance: 0.05 } });
    const after = placeOf(plantMovement(grown), 'third');
    expect(Math.hypot(after.x - before.x, after.y - before.y)).toBeCloseTo(0.358, 3);
  });

  it('does not reach an escape arbor at 57: short by 1.00', () => {
    const placed = plantMovement(example({ escapeY: 57 }));
    expect(placeOf(placed, 'third').state).toBe('contested');
    expect(placed.disagreements).toHaveLength(1);
    const [told] = placed.disagreements;
    expect(told?.gap).toBeCloseTo(1, 9);
    expect(new Set(told?.rules)).toEqual(new Set(['first', 'second']));
    const says = told ? disagreementSaid(placed, told) : '';
    expect(says).toContain('miss by 1.000 mm');
    // 29.8 and 28.2 would only touch: what is offered is the next number of the display that crosses.
    expect(says).toContain('at least 29.801 mm');
    expect(says).toContain('at least 28.201 mm');
    expect(told?.cure?.value).toBeCloseTo(29.801, 9);
  });
});
