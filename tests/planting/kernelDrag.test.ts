/** Dragging with a kept plan: the nearest place that keeps all rules, without a jump to another branch. */
import { describe, expect, it } from 'vitest';
import { createPlanner } from '../../solver/planting/kernel/planner.ts';
import { plantNetwork } from '../../solver/planting/kernel/plant.ts';
import { PointState, RuleKind } from '../../solver/planting/network.ts';
import { distance, networkFrom } from './scenes/builder.ts';
import { chainedNetwork } from './scenes/chained.ts';
import { constructedNetwork } from './scenes/constructed.ts';
import { everyKind } from './scenes/everyKind.ts';

function farthest(a: ArrayLike<number>, b: ArrayLike<number>): number {
  let most = 0;
  for (let k = 0; k < a.length; k++) most = Math.max(most, Math.abs((a[k] as number) - (b[k] as number))); // same length
  return most;
}

describe('a held point', () => {
  for (const [name, scene] of [
    ['arcs only', constructedNetwork(3, 40, 0)],
    ['blocks', chainedNetwork(3, 40, 0)],
    ['every kind of rule', everyKind(5, 0)],
  ] as const) {
    it(`${name}: small steps give what planting the moved network gives, and back is back`, () => {
      const { network, known } = scene;
      const planner = createPlanner(network);
      const [x, y] = [known[2] as number, known[3] as number]; // point 1 is held
      for (const [dx, dy] of [
        [0.3, 0],
        [0.3, 0.3],
        [0, 0.3],
      ] as const) {
        const dragged = planner.drag(1, x + dx, y + dy);
        const coords = known.slice();
        coords.set([x + dx, y + dy], 2);
        expect(farthest(dragged.coords, plantNetwork({ ...network, coords }).coords)).toBeLessThan(1e-8);
        expect(Math.max(...dragged.missBy)).toBeLessThanOrEqual(1e-9);
        expect(dragged.states.every((s) => s === PointState.planted)).toBe(true);
      }
      expect(farthest(planner.drag(1, x, y).coords, known)).toBeLessThan(1e-8);
    });
  }

  it('keeps its hand through a stretch where the arcs do not reach', () => {
    const rules = [distance(2, 0, 30), distance(2, 1, 40)];
    const planner = createPlanner(
      networkFrom({
        at: [
          [0, 0],
          [50, 0],
          [18, 20],
        ],
        held: [0, 1],
        rules,
      }),
    );
    const apart = planner.drag(1, 75, 0);
    expect(apart.states[2]).toBe(PointState.contested);
    expect(apart.disagreements[0]?.gap).toBeCloseTo(5, 12);
    expect(farthest(planner.drag(1, 50, 0).coords, [0, 0, 50, 0, 18, 24])).toBeLessThan(1e-9);
  });
});

describe('a free point', () => {
  it('on a circle goes to the foot of the pointer', () => {
    const planner = createPlanner(
      networkFrom({
        at: [
          [0, 0],
          [30, 0],
        ],
        held: [0],
        rules: [distance(1, 0, 30)],
      }),
    );
    for (const angle of [0.2, 1, 2, 3, 4]) {
      const dragged = planner.drag(1, 55 * Math.cos(angle), 55 * Math.sin(angle));
      expect(farthest(dragged.coords, [0, 0, 30 * Math.cos(angle), 30 * Math.sin(angle)])).toBeLessThan(1e-4);
      expect(dragged.missBy[0]).toBeLessThanOrEqual(1e-9);
    }
  });

  it('takes its linkage along without turning it over', () => {
    const rules = [distance(2, 0, 25), distance(3, 1, 40), distance(2, 3, 62)];
    const at = [
      [0, 0],
      [60, 0],
      [0, 25],
      [60, 40],
    ] as const;
    const planner = createPlanner(networkFrom({ at, held: [0, 1], rules }));
    let last = planner.plant().coords;
    for (let angle = 90; angle >= -60; angle -= 5) {
      const [x, y] = [25 * Math.cos((angle * Math.PI) / 180), 25 * Math.sin((angle * Math.PI) / 180)];
      const dragged = planner.drag(2, x, y);
      expect(Math.hypot((dragged.coords[4] as number) - x, (dragged.coords[5] as number) - y)).toBeLessThan(1e-3); // point 2
      expect(Math.max(...dragged.missBy)).toBeLessThanOrEqual(1e-9);
      expect(farthest(dragged.coords, last)).toBeLessThan(8);
      expect(dragged.freeMotions).toBe(1);
      last = dragged.coords;
    }
  });

  it('that is opposite another takes that one with it', () => {
    const rules = [{ kind: RuleKind.opposite, points: [2, 0, 1] }, distance(1, 0, 20)];
    const planner = createPlanner(
      networkFrom({
        at: [
          [0, 0],
          [20, 0],
          [-20, 0],
        ],
        held: [0],
        rules,
      }),
    );
    expect(farthest(planner.drag(2, 0, 33).coords, [0, 0, 0, -20, 0, 20])).toBeLessThan(1e-4);
  });

  it('that is planted stays where it is', () => {
    const { network, known } = constructedNetwork(3, 10, 0);
    const dragged = createPlanner(network).drag(7, 500, 500);
    expect(farthest(dragged.coords, known)).toBeLessThan(1e-9);
  });
});

it('a stray point or place is refused by name', () => {
  const planner = createPlanner(networkFrom({ at: [[0, 0]], rules: [] }));
  expect(() => planner.drag(1, 0, 0)).toThrow('point 1: expected an index from 0 to 0');
  expect(() => planner.drag(0, Number.NaN, 0)).toThrow('expected finite numbers of mm');
});
