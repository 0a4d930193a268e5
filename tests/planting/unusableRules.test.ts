/** Rules asked of parts that are not there, or that leave no room: told, and nothing else lost. */
import { describe, expect, it } from 'vitest';
import { plantMovement } from '../../solver/planting/index.ts';
import { arbor, buildMovement, clockWheel, distance, held, placeOf, type RuleInput, ruleOf } from './buildMovement.ts';
import { alone, circle, levels, ray } from './ruleScenes.ts';
import { disagreementSaid } from './said.ts';

describe('rules that cannot be asked', () => {
  it('are told and not lost, and the rest is planted', () => {
    const rules: readonly RuleInput[] = [
      distance('missing', 'A', 'nowhere', 10),
      { kind: 'depth', id: 'noWheel', wheels: ['WA', 'WX'] },
      { kind: 'depth', id: 'oneAxis', wheels: ['WA', 'ring'] },
      { kind: 'bearing', id: 'self', point: 'P', centre: 'P', angle: 10 },
      { kind: 'clearBy', id: 'walls', parts: ['drum', 'case'], gap: 1 },
      { kind: 'clearBy', id: 'noEdge', parts: ['P', 'case'], gap: 1, edge: 9 },
      { kind: 'clearBy', id: 'noPart', parts: ['WA', 'ghost'], gap: 1 },
      held('heldNowhere', 'ghost', 1, 2),
      { kind: 'evenSpacing', id: 'twice', points: ['P', 'B', 'P'], centre: 'A' },
    ];
    const placed = alone([ray, distance('d', 'A', 'P', 22), ...rules]);
    expect(placeOf(placed, 'P').state).toBe('planted');
    const told = new Set(placed.disagreements.flatMap((each) => each.rules));
    for (const { id } of rules) {
      expect(ruleOf(placed, id)?.role).toBe('disagrees');
      expect(told).toContain(id);
    }
    for (const each of placed.disagreements) expect(disagreementSaid(placed, each)).not.toMatch(/undefined|NaN/);
  });

  it('say how much room is missing inside a ring', () => {
    const placed = plantMovement(
      buildMovement({
        arbors: [arbor('A', 0, 0)],
        walls: [{ id: 'drum', outline: circle(30), inner: circle(20), levels }],
        wheels: [{ ...clockWheel('W', 'A', 30, 1), tipDiameter: 36 }],
        rules: [held('a', 'A', 0, 0), { kind: 'clearBy', id: 'c', parts: ['W', 'drum'], gap: 3 }],
      }),
    );
    expect(placed.disagreements).toHaveLength(1);
    expect(placed.disagreements[0]?.gap).toBeCloseTo(1, 12);
    expect(placed.disagreements.map((each) => disagreementSaid(placed, each)).join()).toContain('at most 2.000 mm');
  });
});
