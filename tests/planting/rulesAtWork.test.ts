/** Rules with what belongs to them: edges, posts, pipes, sliding, rules left out, recorded sides. */
import { describe, expect, it } from 'vitest';
import { plantMovement } from '../../solver/planting/index.ts';
import { arbor, buildMovement, clockWheel, distance, held, placeOf, type RuleInput, ruleOf } from './buildMovement.ts';
import { alone, levels, ray } from './ruleScenes.ts';
import { stateSaid } from './said.ts';

const R = 'rule';

describe('rules at work', () => {
  it('an arc of an edge is kept clear of from its own side, hollow or bulging', () => {
    // A slot: a half circle of radius 30 about (0, 0) bulging to the right, and one cut into it from the left.
    const vertices = [
      { x: -60, y: -30 },
      { x: 0, y: -30, bulge: 1 },
      { x: 0, y: 30 },
      { x: -60, y: 30, bulge: -1 },
    ];
    const planted = (edge: number, x: number, y: number) =>
      placeOf(
        plantMovement(
          buildMovement({
            arbors: [arbor('A', 0, 0), arbor('P', x, y)],
            walls: [{ id: 'slot', outline: { kind: 'path', vertices }, levels }],
            rules: [
              held('a', 'A', 0, 0),
              { kind: 'bearing', id: 'b', point: 'P', centre: 'A', angle: x > 0 ? 0 : 180 },
              { kind: 'clearBy', id: 'c', parts: ['P', 'slot'], gap: 4, edge },
            ],
          }),
        ),
        'P',
      );
    expect(planted(1, 40, 1).x).toBeCloseTo(35, 9); // outside the bulge: 30 + 4 + 1
    expect(planted(3, -50, 1).x).toBeCloseTo(-35, 9); // in the hollow about (−60, 0): 30 − 4 − 1 from it
  });

  it('a wheel keeps its tips clear of a post', () => {
    const tip = (15 + 2.76) / 2; // addendum of a clock wheel, 1.38 × module: practice 6.1
    const placed = plantMovement(
      buildMovement({
        arbors: [arbor('A', 0, 0), arbor('P', 20, 10)],
        posts: [{ id: 'Q', at: [60, 0], diameter: 8 }],
        wheels: [{ ...clockWheel('W', 'P', 15, 1), tipDiameter: 2 * tip }],
        rules: [
          held('a', 'A', 0, 0),
          held('q', 'Q', 60, 0),
          distance('d', 'A', 'P', 50),
          { kind: 'clearBy', id: 'c', parts: ['W', 'Q'], gap: 0.5 },
        ],
      }),
    );
    const place = placeOf(placed, 'P');
    expect(Math.hypot(place.x - 60, place.y) - tip - 4).toBeCloseTo(0.5, 9);
    expect(place.y).toBeGreaterThan(0);
  });

  it('held puts a point at its coordinates, opposite and even spacing follow it exactly', () => {
    const placed = plantMovement(
      buildMovement({
        arbors: ['A', 'P', 'Q', 'R', 'S'].map((id) => arbor(id, 1, 2)),
        rules: [
          held('a', 'A', 3, 4),
          held('p', 'P', 13, 4),
          { kind: 'evenSpacing', id: 'even', points: ['P', 'Q', 'R', 'S'], centre: 'A' },
        ],
      }),
    );
    expect(placeOf(placed, 'Q').x).toBeCloseTo(3, 12);
    expect(placeOf(placed, 'Q').y).toBeCloseTo(14, 12);
    // Half a turn is exact.
    expect([placeOf(placed, 'R').x, placeOf(placed, 'R').y]).toEqual([-7, 4]);
    expect(placeOf(placed, 'S').y).toBeCloseTo(-6, 12);
    expect(stateSaid(placed)).toBe('5 planted.');
  });

  it('pipes, and what rides on pipes, stand where their arbor stands', () => {
    const placed = plantMovement(
      buildMovement({
        arbors: [
          { ...arbor('outer', 9, 9), ridesOn: 'inner' },
          { ...arbor('inner', 5, 5), ridesOn: 'A' },
          arbor('A', 1, 1),
        ],
        rules: [held('a', 'A', 1.25, 2.5)],
      }),
    );
    for (const id of ['A', 'inner', 'outer']) {
      expect(placeOf(placed, id)).toMatchObject({ x: 1.25, y: 2.5, state: 'planted' });
    }
    expect(new Set(placeOf(placed, 'A').hangsOn)).toEqual(new Set(['inner']));
  });

  it('a post that may slide keeps its radius, and moves along its circle only', () => {
    const build = (rules: readonly RuleInput[]) =>
      plantMovement(
        buildMovement({
          arbors: [arbor('A', 0, 0)],
          posts: [{ id: 'P', at: [30, 40], diameter: 6, slidesAbout: 'A' }],
          rules: [held('a', 'A', 0, 0), ...rules],
        }),
      );
    const free = build([]);
    const place = placeOf(free, 'P');
    expect(place).toMatchObject({ state: 'loose', x: 30, y: 40 });
    expect(free.freeMotions).toBe(1);
    expect(Math.abs((place.free[0]?.x ?? 0) * 0.6 + (place.free[0]?.y ?? 0) * 0.8)).toBeLessThan(1e-9);
    const ruled = build([{ kind: 'radius', id: 'r', point: 'P', centre: 'A', length: 45 }]);
    expect(Math.hypot(placeOf(ruled, 'P').x, placeOf(ruled, 'P').y)).toBeCloseTo(45, 9);
    const settled = build([{ kind: 'bearing', id: 'b', point: 'P', centre: 'A', angle: 90 }]);
    expect(placeOf(settled, 'P').state).toBe('planted');
    expect(placeOf(settled, 'P').y).toBeCloseTo(50, 9);
  });

  it('a rule that is left out asks nothing and still shows its distances', () => {
    const placed = alone([ray, { kind: 'depth', id: R, wheels: ['WA', 'WP'], leaveOut: true, held: 24 }]);
    expect(placed.freeMotions).toBe(1);
    expect(ruleOf(placed, R)).toMatchObject({ role: 'leftOut', missBy: 0, held: 24 });
    expect(ruleOf(placed, R)?.calculated).toBeCloseTo(22.5, 9);
  });

  it('a recorded side decides the crossing against the sketch', () => {
    const build = (side: 'left' | 'right') =>
      plantMovement(
        buildMovement({
          arbors: [
            arbor('A', 0, 0),
            arbor('B', 40, 0),
            { ...arbor('P', 20, 10), crossing: { from: 'A', to: 'B', side } },
          ],
          rules: [
            held('a', 'A', 0, 0),
            held('b', 'B', 40, 0),
            distance('1', 'A', 'P', 25),
            distance('2', 'B', 'P', 25),
          ],
        }),
      );
    expect(placeOf(build('left'), 'P').y).toBeCloseTo(15, 9);
    expect(placeOf(build('right'), 'P').y).toBeCloseTo(-15, 9);
  });
});
