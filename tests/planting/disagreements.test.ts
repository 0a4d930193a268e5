/** Rules that cannot hold together: the smallest set, the gap, and the number that would cure it, in the maker's words. */
import { describe, expect, it } from 'vitest';
import { depthVerdicts } from '../../solver/clearance/index.ts';
import type { RuleId } from '../../solver/movement/ids.ts';
import { applyEdit } from '../../solver/movement/index.ts';
import type { Movement } from '../../solver/movement/schema.ts';
import type { Disagreement } from '../../solver/planting/index.ts';
import { plantMovement } from '../../solver/planting/index.ts';
import type { PlacedMovement } from '../../solver/planting/placed.ts';
import { arbor, buildMovement, clockWheel, distance, held, placeOf, type RuleInput, ruleOf } from './buildMovement.ts';
import { disagreementSaid, stateSaid } from './said.ts';

/** The only disagreement, with what is said of it. */
function only(placed: PlacedMovement): Disagreement & { readonly says: string } {
  expect(placed.disagreements).toHaveLength(1);
  const [told] = placed.disagreements;
  if (!told) throw new Error('nothing is told');
  return { ...told, says: disagreementSaid(placed, told) };
}

/** Does the movement plant without disagreement once the cure's value is entered? */
function isCured(movement: Movement, told: Disagreement): boolean {
  if (!told.cure) return false;
  const edit = applyEdit(movement, { kind: 'setValue', rule: told.cure.rule, value: told.cure.value });
  return edit.kind === 'edited' && plantMovement(edit.movement).disagreements.length === 0;
}

const abp = (rules: readonly RuleInput[], bx = 57, sketch: readonly [number, number] = [20, 15]): Movement =>
  buildMovement({
    arbors: [arbor('A', 0, 0), arbor('B', bx, 0), { ...arbor('P', ...sketch), name: 'Third' }],
    marks: [{ id: 'M', name: 'M', at: [0, 30] }],
    rules: [held('a', 'A', 0, 0), held('b', 'B', bx, 0), held('m', 'M', 0, 30), ...rules],
  });

describe('two loci that do not meet', () => {
  it('arcs too short: both least lengths, the gap, and only the point contested', () => {
    const movement = abp([distance('1', 'A', 'P', 30), distance('2', 'B', 'P', 26.57)]);
    const placed = plantMovement(movement);
    const told = only(placed);
    expect(told.gap).toBeCloseTo(0.43, 12);
    expect(told.says).toBe(
      'The arc from A and the arc from B to Third miss by 0.430 mm. A distance of at least 30.431 mm from A or a distance of at least 27.001 mm from B would reach.',
    );
    expect(new Set(told.rules)).toEqual(new Set(['1', '2']));
    expect(isCured(movement, told)).toBe(true);
    expect(placeOf(placed, 'A').state).toBe('planted');
    expect(placeOf(placed, 'P').state).toBe('contested');
    expect(stateSaid(placed)).toContain('1 contested');
  });

  it('a printed least length really crosses: it lies beyond the limit, a greatest length short of it', () => {
    const movement = abp([distance('1', 'A', 'P', 30), distance('2', 'B', 'P', 26.56789)]);
    expect(only(plantMovement(movement)).says).toContain('at least 30.433 mm from A');
    const inside = abp([distance('1', 'A', 'P', 90.00049), distance('2', 'B', 'P', 30)]);
    expect(only(plantMovement(inside)).says).toContain('at most 86.999 mm from A');
  });

  it.each([
    ['mm', 0],
    ['mm', 3],
    ['mm', 6],
    ['inch', 3],
    ['inch', 6],
  ] as const)(
    'every number that is offered plants the point when it is entered as printed: %s, %i decimals',
    (unit, decimals) => {
      for (const [a, b] of [
        [30, 26.57],
        [90, 30],
        [30, 26.56789],
      ] as const) {
        const movement = {
          ...abp([distance('1', 'A', 'P', a), distance('2', 'B', 'P', b)]),
          display: { unit, decimals },
        };
        const told = only(plantMovement(movement));
        const printed = [...told.says.matchAll(/at (?:least|most) ([\d.]+) (?:mm|in) from (\w)/g)];
        expect(printed).toHaveLength(2);
        for (const [, number, from] of printed) {
          const value = Number(number) * (unit === 'inch' ? 25.4 : 1);
          const edit = applyEdit(movement, { kind: 'setValue', rule: from === 'A' ? '1' : '2', value });
          if (edit.kind !== 'edited') throw new Error(JSON.stringify(edit.why));
          expect(placeOf(plantMovement(edit.movement), 'P').state, `${number} from ${from}`).toBe('planted');
        }
      }
    },
  );

  it('one arc inside the other', () => {
    const movement = abp([distance('1', 'A', 'P', 90), distance('2', 'B', 'P', 30)]);
    const told = only(plantMovement(movement));
    expect(told.gap).toBeCloseTo(3, 12);
    expect(told.says).toContain('one lies inside the other');
    expect(told.says).toContain('at least 33.001 mm from B');
    expect(told.says).toContain('at most 86.999 mm from A');
    expect(isCured(movement, told)).toBe(true);
  });

  it('an arc and a line', () => {
    const movement = abp([distance('1', 'A', 'P', 20), { kind: 'inLine', id: 'l', point: 'P', through: ['B', 'M'] }]);
    const told = only(plantMovement(movement));
    const off = (57 * 30) / Math.hypot(57, 30);
    expect(told.gap).toBeCloseTo(off - 20, 9);
    expect(told.says).toContain('the line through B and M');
    expect((told.cure?.value ?? 0) - off).toBeGreaterThan(0.0004);
    expect((told.cure?.value ?? 0) - off).toBeLessThan(0.0016);
    expect(isCured(movement, told)).toBe(true);
  });

  it('a ray that points away', () => {
    const movement = abp([
      distance('1', 'A', 'P', 20),
      { kind: 'bearing', id: 'r', point: 'P', centre: 'B', angle: 5 },
    ]);
    const told = only(plantMovement(movement));
    expect(told.gap).toBeCloseTo(37, 6);
    expect(told.says).toContain('the ray from B');
  });

  it('a stated gap is cured by a gap, not by a centre distance', () => {
    const movement = abp([distance('1', 'A', 'P', 30), { kind: 'clearBy', id: 'gap', parts: ['B', 'P'], gap: 20 }]);
    const told = only(plantMovement(movement));
    // Arbors of the default radius 1: their centres are 22 apart, and 27 would reach.
    expect(told.gap).toBeCloseTo(5, 9);
    expect(told.says).toContain('a gap of at least 25.001 mm from B');
    expect(applyEdit(movement, { kind: 'setValue', rule: 'gap', value: 25 }).kind).toBe('edited');
    expect(isCured(movement, { ...told, cure: { rule: 'gap' as never, value: 25 } })).toBe(true); // an id of this movement
    expect(isCured(movement, told)).toBe(true);
  });

  it('two lengths from one centre are told as such', () => {
    const movement = abp([distance('1', 'A', 'P', 30), distance('2', 'A', 'P', 31), distance('3', 'B', 'P', 40)]);
    const told = only(plantMovement(movement));
    // The first of the two places, the other checks and is over.
    expect(told.cause).toMatchObject({ kind: 'over', check: '2', allowed: 0.02, measures: { kind: 'length' } });
    expect(told.gap).toBeCloseTo(1, 9);
    expect(told.rules).toEqual(['2', '1']);
    expect(told.cure?.rule).toBe('2');
    expect(told.cure?.value).toBeCloseTo(30, 9);
    expect(isCured(movement, told)).toBe(true);
  });

  it('about centres that are themselves placed: the lengths that reach, not one that would be exact', () => {
    const movement = buildMovement({
      arbors: [arbor('A', 0, 0), arbor('E', 0, 46), arbor('P', -16, 26)],
      rules: [
        held('a', 'A', 0, 0),
        { kind: 'bearing', id: 'up', point: 'E', centre: 'A', angle: 90 },
        distance('height', 'A', 'E', 46),
        distance('1', 'A', 'P', 30.64),
        distance('2', 'E', 'P', 14.53),
      ],
    });
    const told = only(plantMovement(movement));
    expect(told.gap).toBeCloseTo(0.83, 9);
    expect(told.says).toContain('at least 31.471 mm from A or a distance of at least 15.361 mm from E would reach');
    expect(new Set(told.rules)).toEqual(new Set(['1', '2', 'height']));
    expect(isCured(movement, told)).toBe(true);
  });

  it('what follows from a miss is not told again, and is not settled either', () => {
    const movement = buildMovement({
      arbors: [arbor('A', 0, 0), arbor('B', 57, 0), arbor('P', 20, 15), arbor('Q', 30, 40), arbor('R', 60, 50)],
      marks: [{ id: 'M', at: [0, 30] }],
      posts: [{ id: 'S', at: [60, 50], diameter: 5 }],
      rules: [
        ...[held('a', 'A', 0, 0), held('b', 'B', 57, 0), held('m', 'M', 0, 30)],
        ...[distance('1', 'A', 'P', 300), distance('2', 'B', 'P', 40)],
        ...[distance('3', 'P', 'Q', 27), distance('4', 'A', 'Q', 50)],
        ...[distance('5', 'Q', 'R', 31), distance('6', 'B', 'R', 50)],
        { kind: 'opposite', id: '7', point: 'S', of: 'R', centre: 'A' },
      ],
    });
    const placed = plantMovement(movement);
    const [told] = placed.disagreements;
    expect(new Set(told?.rules)).toEqual(new Set(['1', '2']));
    for (const id of ['P', 'Q', 'R', 'S']) expect(placeOf(placed, id).state).toBe('contested');
    for (const id of ['A', 'B', 'M']) expect(placeOf(placed, id).state).toBe('planted');
  });

  it('points held at one place have no length between them', () => {
    const movement = buildMovement({
      arbors: [arbor('A', 0, 0), arbor('B', 0, 0)],
      rules: [held('a', 'A', 0, 0), held('b', 'B', 0, 0), distance('1', 'A', 'B', 3)],
    });
    const told = only(plantMovement(movement));
    expect(told.cause).toMatchObject({ kind: 'over', check: '1', measures: { kind: 'length', value: 0 } });
    expect(told.cure).toBeUndefined();
  });

  it('in inches, when the maker works in inches', () => {
    const movement = {
      ...abp([distance('1', 'A', 'P', 30), distance('2', 'B', 'P', 1.6)]),
      display: { unit: 'inch', decimals: 4 },
    } as const;
    const told = only(plantMovement(movement));
    expect(told.says).toContain('miss by 1.00000 in');
  });
});

describe('more rules than places', () => {
  it('a third distance that does not fit is named with the one that would', () => {
    const movement = abp([distance('1', 'A', 'P', 30), distance('2', 'B', 'P', 40), distance('3', 'M', 'P', 20)]);
    const placed = plantMovement(movement);
    const told = only(placed);
    // B and M stand 64.4 apart: 40 and 20 do not meet, whatever the first one says.
    expect(new Set(told.rules)).toEqual(new Set(['2', '3']));
    expect(told.cause).toMatchObject({ kind: 'over', check: '3' });
    expect(told.rules[0]).toBe('3');
    expect(told.cure?.rule).toBe('3');
    const x = (30 ** 2 - 40 ** 2 + 57 ** 2) / (2 * 57);
    const y = Math.sqrt(30 ** 2 - x ** 2);
    expect(told.cure?.value).toBeCloseTo(Math.hypot(x, y - 30), 9);
    expect(isCured(movement, told)).toBe(true);
    expect(['1', '2', '3'].map((id) => ruleOf(placed, id)?.role)).toEqual(['places', 'places', 'disagrees']);
    expect(placeOf(placed, 'P').state).toBe('planted');
  });

  it('does not name rules that have nothing to do with it', () => {
    const movement = buildMovement({
      arbors: [arbor('A', 0, 0), arbor('B', 50, 0), arbor('P', 20, 20), arbor('Q', 80, 30), arbor('R', 70, -20)],
      rules: [
        held('a', 'A', 0, 0),
        held('b', 'B', 50, 0),
        distance('1', 'A', 'P', 30),
        distance('2', 'B', 'P', 35),
        distance('3', 'B', 'Q', 40),
        distance('4', 'P', 'Q', 60),
        distance('5', 'B', 'R', 30),
        distance('6', 'A', 'R', 70),
        distance('wrong', 'A', 'P', 31),
      ],
    });
    const placed = plantMovement(movement);
    const told = only(placed);
    expect(new Set(told.rules)).toEqual(new Set(['1', 'wrong']));
    expect(placeOf(placed, 'R').state).toBe('planted');
    expect(ruleOf(placed, '5')?.role).toBe('places');
  });

  it('two depths on the same two axes: the second checks, and stops where the sums are not equal', () => {
    const motionWork = (leaves: number): Movement =>
      buildMovement({
        arbors: [arbor('centre', 0, 0), { ...arbor('hour', 0, 0), ridesOn: 'centre' }, arbor('minute', 10, 5)],
        wheels: [
          clockWheel('cannon', 'centre', 12, 0.8),
          clockWheel('minuteWheel', 'minute', 36, 0.8),
          clockWheel('minutePinion', 'minute', leaves, 0.8, 5),
          clockWheel('hourWheel', 'hour', 40 - (leaves - 8), 0.8, 5),
        ],
        rules: [
          held('c', 'centre', 0, 0),
          { kind: 'depth', id: 'first', wheels: ['cannon', 'minuteWheel'] },
          { kind: 'depth', id: 'second', wheels: ['minutePinion', 'hourWheel'] },
          { kind: 'bearing', id: 'b', point: 'minute', centre: 'centre', angle: 30 },
        ],
      });
    const equal = plantMovement(motionWork(8));
    expect(equal.disagreements).toEqual([]);
    expect(placeOf(equal, 'minute').state).toBe('planted');
    expect([ruleOf(equal, 'first')?.role, ruleOf(equal, 'second')?.role]).toEqual(['places', 'checks']);
    const movement = motionWork(8);
    const unequal = {
      ...movement,
      wheels: movement.wheels.map((wheel) => (wheel.teeth === 40 ? { ...wheel, teeth: 45 } : wheel)),
    };
    // Planting tells the difference; how the teeth run there is judged by their window.
    const placed = plantMovement(unequal);
    expect(placed.disagreements).toEqual([]);
    expect(ruleOf(placed, 'second')).toMatchObject({ role: 'checks', duty: 'checks' });
    expect(ruleOf(placed, 'second')?.missBy).toBeCloseTo(2, 9);
    expect(depthVerdicts(placed).get('second' as RuleId)).toMatchObject({
      severity: 'stops',
      fault: { kind: 'tooNear' },
    });
  });

  it('a distance between two held points says where they stand', () => {
    const movement = abp([distance('1', 'A', 'B', 50)]);
    const told = only(plantMovement(movement));
    expect(told.rules).toEqual(['1']);
    expect(told.gap).toBeCloseTo(7, 12);
    expect(told.cause).toMatchObject({ kind: 'over', check: '1', measures: { kind: 'length', value: 57 } });
  });

  it('a triangle without enough length', () => {
    const movement = buildMovement({
      arbors: [arbor('A', 0, 0), arbor('P', 20, 5), arbor('Q', 45, 0)],
      rules: [
        held('a', 'A', 0, 0),
        { kind: 'bearing', id: 'b', point: 'Q', centre: 'A', angle: 0 },
        distance('1', 'A', 'P', 20),
        distance('2', 'P', 'Q', 24),
        distance('3', 'A', 'Q', 45),
      ],
    });
    const told = only(plantMovement(movement));
    expect(new Set(told.rules)).toEqual(new Set(['1', '2', '3']));
    expect(told.says).not.toMatch(/undefined|NaN/);
  });
});

describe('made places', () => {
  it('a drilled place contradicting a held one is told once, and the drilled place stands', () => {
    const movement = {
      ...abp([]),
      made: [{ point: 'A', state: 'drilled', at: [0.3, -0.4] }] as unknown as Movement['made'], // a test's own id
    };
    const placed = plantMovement(movement);
    expect(placeOf(placed, 'A')).toMatchObject({ x: 0.3, y: -0.4 });
    const told = only(placed);
    expect(told.rules).toEqual(['a']);
    expect(told.gap).toBeCloseTo(0.5, 12);
    expect(told.cause).toMatchObject({ kind: 'over', check: 'a', allowed: 0.05 });
  });

  it('a drilled arbor stands where it is; its rules check, and are over beyond what a hole may be off', () => {
    const rules = [distance('1', 'A', 'P', 30), distance('2', 'B', 'P', 40)];
    const planted = placeOf(plantMovement(abp(rules)), 'P');
    const at = [planted.x + 0.13, planted.y - 0.01] as const;
    const made = [{ point: 'P', state: 'drilled', at }] as unknown as Movement['made']; // a test's own id
    const placed = plantMovement({ ...abp(rules), made });
    expect(placeOf(placed, 'P')).toMatchObject({ x: at[0], y: at[1] });
    expect(ruleOf(placed, '1')?.missBy).toBeCloseTo(Math.abs(Math.hypot(...at) - 30), 12);
    expect(placed.disagreements.map(({ cause }) => cause.kind)).toEqual(['over', 'over']);
    const near = [{ point: 'P', state: 'drilled', at: [planted.x + 0.03, planted.y] }] as unknown as Movement['made']; // a test's own id
    const fine = plantMovement({ ...abp(rules), made: near });
    expect(fine.disagreements).toEqual([]);
    expect(['1', '2'].map((id) => ruleOf(fine, id)?.role)).toEqual(['checks', 'checks']);
  });

  it('a point that is drilled without a place, or only marked, is planted as before', () => {
    const rules = [distance('1', 'A', 'P', 30), distance('2', 'B', 'P', 40)];
    const made = [
      { point: 'P', state: 'marked', at: [1, 1] },
      { point: 'P', state: 'drilled' },
    ] as unknown as Movement['made']; // a test's own id
    expect(plantMovement({ ...abp(rules), made }).disagreements).toEqual([]);
  });
});
