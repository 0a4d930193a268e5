/** Rules told to check: they never place, whatever their kind, and what could place instead of another is offered with what moves. */
import { describe, expect, test } from 'vitest';
import type { RuleId } from '../../solver/movement/ids.ts';
import { applyEdit, type Edit } from '../../solver/movement/index.ts';
import type { Movement } from '../../solver/movement/schema.ts';
import { placeInstead, plantMovement, toSettle } from '../../solver/planting/index.ts';
import { speakerOf } from '../../solver/words/index.ts';
import { plantingSays } from '../../solver/words/planting/index.ts';
import { arbor, buildMovement, distance, held, mark, placeOf, pointId, ruleOf } from './buildMovement.ts';

const ruleId = (id: string): RuleId => id as RuleId; // a test's own id

function edited(movement: Movement, edit: Edit): Movement {
  const result = applyEdit(movement, edit);
  if (result.kind === 'refused') throw new Error(JSON.stringify(result.why));
  return result.movement;
}

/** P from A and B; C measures it besides, 0.05 off; Q hangs on P. */
const triangle = buildMovement({
  arbors: [arbor('A', 0, 0), arbor('B', 40, 0), arbor('C', 20, 60), arbor('P', 20, 20), arbor('Q', 35, 35)],
  rules: [
    held('a', 'A', 0, 0),
    held('b', 'B', 40, 0),
    held('c', 'C', 20, 60),
    distance('ap', 'A', 'P', Math.hypot(20, 20)),
    distance('bp', 'B', 'P', Math.hypot(20, 20)),
    distance('cp', 'C', 'P', 40.05),
    distance('pq', 'P', 'Q', Math.hypot(15, 15)),
    distance('bq', 'B', 'Q', Math.hypot(5, 35)),
  ],
});

describe('a rule told to check', () => {
  test('never places: its point is loose, and it is named as what would settle it', () => {
    const told = edited(triangle, { kind: 'setDuty', rules: ['bp', 'cp'], duty: 'checks' });
    const placed = plantMovement(told);
    expect(placeOf(placed, 'P').state).toBe('loose');
    expect(ruleOf(placed, 'bp')).toMatchObject({ duty: 'told' });
    expect(toSettle(placed)?.told).toEqual(['bp', 'cp']);
    expect(plantingSays(placed, speakerOf(told))).toContain('told to check');
  });

  test('lets the next rule place', () => {
    const placed = plantMovement(edited(triangle, { kind: 'setDuty', rules: ['bp'], duty: 'checks' }));
    expect(ruleOf(placed, 'cp')?.duty).toBe('places');
    const { x, y } = placeOf(placed, 'P');
    expect(Math.hypot(x - 20, y - 60)).toBeCloseTo(40.05, 9);
    expect(ruleOf(placed, 'bp')?.missBy).toBeCloseTo(Math.abs(Math.hypot(x - 40, y) - Math.hypot(20, 20)), 9);
  });

  test.each([
    ['opposite', ['ap'], { kind: 'opposite', id: 't', point: 'P', centre: 'A', of: 'B' }],
    ['even spacing', ['ap'], { kind: 'evenSpacing', id: 't', points: ['B', 'P'], centre: 'A' }],
    ['same radius', ['ap'], { kind: 'sameRadius', id: 't', points: ['B', 'P'], centre: 'A' }],
    ['held', ['ap', 'bp'], { kind: 'held', id: 't', point: 'P', at: [20.3, 20.4] }],
    ['in line', ['ap', 'bp'], { kind: 'inLine', id: 't', point: 'P', through: ['A', 'B'] }],
    ['direction', ['ap', 'bp'], { kind: 'bearing', id: 't', point: 'P', centre: 'A', angle: 44 }],
  ] as const)('%s joins and holds nothing, and its miss is told', (_, behind, rule) => {
    const without = plantMovement(triangle);
    const told = { ...rule, duty: 'checks' as const };
    const placed = plantMovement(buildMovement({ ...triangle, rules: [told, ...triangle.rules] } as never));
    for (const id of ['A', 'B', 'C', 'P', 'Q']) {
      const [was, is] = [placeOf(without, id), placeOf(placed, id)];
      expect([is.x, is.y, is.state]).toEqual([was.x, was.y, was.state]);
    }
    expect(ruleOf(placed, 't')).toMatchObject({ duty: 'told', role: 'disagrees' });
    const over = placed.disagreements.find(({ cause }) => cause.kind === 'over' && cause.check === 't');
    expect(over?.gap).toBeGreaterThan(0.1);
    // P stands by two arcs: what is asked of it cannot hold with those, or with one of them already.
    expect(over?.rules).toEqual(expect.arrayContaining([...behind]));
  });

  test('of a post that slides leaves the radius it is sketched at', () => {
    const posts = [{ id: 'S', at: [0, 15] as const, diameter: 4, slidesAbout: 'A' }];
    const radius = { kind: 'radius', id: 'r', point: 'S', centre: 'A', length: 18, duty: 'checks' } as const;
    const placed = plantMovement(buildMovement({ ...triangle, posts, rules: [...triangle.rules, radius] } as never));
    const { x, y, state } = placeOf(placed, 'S');
    expect([Math.hypot(x, y), state]).toEqual([15, 'loose']);
    expect(ruleOf(placed, 'r')?.missBy).toBeCloseTo(3, 9);
  });
});

describe('place by this one instead', () => {
  test('proposes a rule of the same point, and moves only what hangs on it', () => {
    const placed = plantMovement(triangle);
    const ways = placeInstead(placed, ruleId('cp'));
    expect(new Set(ways.map(({ insteadOf }) => insteadOf))).toEqual(new Set(['ap', 'bp']));
    for (const { insteadOf, edit, moves } of ways) {
      const next = plantMovement(edited(triangle, edit));
      expect(ruleOf(next, 'cp')?.duty).toBe('places');
      expect(ruleOf(next, insteadOf)?.duty).toBe('told');
      expect(moves.count).toBe(2);
      for (const id of ['A', 'B', 'C']) {
        expect(placeOf(next, id)).toMatchObject({ x: placeOf(placed, id).x, y: placeOf(placed, id).y });
      }
      const [was, is] = [placeOf(placed, 'P'), placeOf(next, 'P')];
      expect(moves.most).toBeGreaterThanOrEqual(Math.hypot(is.x - was.x, is.y - was.y));
    }
  });

  test('the shares are what a hundredth in each rule does to the check', () => {
    const placed = plantMovement(triangle);
    for (const { insteadOf, share } of placeInstead(placed, ruleId('cp'))) {
      const rules = triangle.rules.map((rule) =>
        rule.id === insteadOf && rule.kind === 'distance' ? { ...rule, length: rule.length + 1e-5 } : rule,
      );
      const { x, y } = placeOf(plantMovement({ ...triangle, rules }), 'P');
      const { x: wx, y: wy } = placeOf(placed, 'P');
      const change = Math.abs(Math.hypot(x - 20, y - 60) - Math.hypot(wx - 20, wy - 60)) / 1e-5;
      expect(share).toBeCloseTo(change, 4);
    }
  });

  test('tells every rule to check that would step in before the wanted one', () => {
    const D = arbor('D', -30, 20);
    const more = buildMovement({
      ...triangle,
      arbors: [...triangle.arbors, D],
      rules: [...triangle.rules, held('d', 'D', -30, 20), distance('dp', 'D', 'P', 50.02)],
    } as never);
    const [way] = placeInstead(plantMovement(more), ruleId('dp'));
    if (!way) throw new Error('nothing is proposed');
    const next = plantMovement(edited(more, way.edit));
    expect(ruleOf(next, 'dp')?.duty).toBe('places');
    expect(ruleOf(next, 'cp')?.duty).toBe('told');
    expect(next.freeMotions).toBe(0);
  });

  test('is not proposed for a drilled point, nor for a rule that places', () => {
    const drilled = edited(triangle, { kind: 'setMade', made: { point: 'P', state: 'drilled', at: [20.03, 20] } });
    const placed = plantMovement(drilled);
    expect(ruleOf(placed, 'ap')?.duty).toBe('released');
    for (const id of ['ap', 'bp', 'cp']) expect(placeInstead(placed, ruleId(id))).toEqual([]);
    expect(placeInstead(plantMovement(triangle), ruleId('ap'))).toEqual([]);
  });
});

describe('let the hole stand', () => {
  const drilled = edited(triangle, { kind: 'setMade', made: { point: 'P', state: 'drilled', at: [20.1, 20.1] } });
  const overOf = (movement: Movement): string[] =>
    plantMovement(movement).disagreements.flatMap(({ cause }) => (cause.kind === 'over' ? [cause.check] : []));

  test('is kept with the hole: the miss is shown and no longer told as over', () => {
    expect(overOf(drilled)).toEqual(expect.arrayContaining(['ap', 'cp']));
    const stands = edited(drilled, { kind: 'letStand', point: 'P', rules: ['ap', 'cp'], stands: true });
    expect(overOf(stands)).not.toEqual(expect.arrayContaining(['ap']));
    expect(ruleOf(plantMovement(stands), 'ap')).toMatchObject({ role: 'checks', duty: 'released', stands: true });
    expect(overOf(edited(stands, { kind: 'letStand', point: 'P', rules: ['ap'], stands: false }))).toContain('ap');
  });

  test('is gone with the hole, stays with a note, and goes with the rule', () => {
    const stands = edited(drilled, { kind: 'letStand', point: 'P', rules: ['ap', 'cp'], stands: true });
    const noted = edited(stands, {
      kind: 'setMade',
      made: { point: 'P', state: 'drilled', at: [20.1, 20.1], note: 'bushed' },
    });
    expect(noted.made[0]?.stands).toEqual(['ap', 'cp']);
    const again = edited(stands, { kind: 'setMade', made: { point: 'P', state: 'drilled', at: [20.2, 20.1] } });
    expect(again.made[0]?.stands).toBeUndefined();
    expect(again.made[0]?.earlier?.[0]).not.toHaveProperty('stands');
    expect(edited(stands, { kind: 'remove', ids: ['ap'] }).made[0]?.stands).toEqual(['cp']);
    expect(edited(stands, { kind: 'rename', from: 'ap', to: 'first' }).made[0]?.stands).toEqual(['first', 'cp']);
    expect(edited(stands, { kind: 'clearMade', point: 'P' }).made).toEqual([]);
  });

  test('needs a hole and a rule that are there', () => {
    for (const [point, rules] of [
      ['Q', ['pq']],
      ['P', ['nothing']],
    ] as const) {
      expect(applyEdit(drilled, { kind: 'letStand', point, rules, stands: true }).kind).toBe('refused');
    }
  });
});

test('same place cannot be told to check: what it joins is one point', () => {
  const movement = buildMovement({
    arbors: [arbor('A', 0, 0)],
    marks: [mark('M', 0, 0)],
    rules: [{ kind: 'samePlace', id: 's', points: ['A', 'M'] }],
  });
  const result = applyEdit(movement, { kind: 'setDuty', rules: ['s'], duty: 'checks' });
  expect(JSON.stringify(result.kind === 'refused' && result.why)).toContain('duty');
  expect(pointId('A')).toBe('A');
});
