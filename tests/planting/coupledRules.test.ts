/** Every kind of rule in a group of points that cannot be built one after another. */
import { describe, expect, it } from 'vitest';
import { plantMovement } from '../../solver/planting/index.ts';
import {
  arbor,
  buildMovement,
  clockWheel,
  distance,
  held,
  largestMiss,
  mark,
  placeOf,
  type RuleInput,
} from './buildMovement.ts';
import { DEGREES } from './ruleScenes.ts';

describe('each kind in a coupled group', () => {
  // P and Q cannot be built one after the other: each has one rule to the ground and two that join them.
  const known: Readonly<Record<'A' | 'B' | 'C' | 'P' | 'Q' | 'S', readonly [number, number]>> = {
    A: [0, 0],
    B: [60, 5],
    C: [-10, 40],
    P: [21, 13],
    Q: [38, 27],
    S: [4, -1],
  };
  const apart = (a: keyof typeof known, b: keyof typeof known) =>
    Math.hypot(known[a][0] - known[b][0], known[a][1] - known[b][1]);
  const angle = (a: keyof typeof known, b: keyof typeof known) =>
    Math.atan2(known[b][1] - known[a][1], known[b][0] - known[a][0]) * DEGREES;
  const lineThroughP = [known.P[0] + 30, known.P[1] - 44] as const;

  const grounded: Record<string, RuleInput> = {
    distance: distance('k', 'A', 'P', apart('A', 'P')),
    radius: { kind: 'radius', id: 'k', point: 'P', centre: 'C', length: apart('C', 'P') },
    depth: { kind: 'depth', id: 'k', wheels: ['WA', 'WP'], use: 'held', held: apart('A', 'P') },
    bearing: { kind: 'bearing', id: 'k', point: 'P', centre: 'A', angle: angle('A', 'P') },
    'bearing from a point': {
      kind: 'bearing',
      id: 'k',
      point: 'P',
      centre: 'A',
      reference: 'C',
      angle: angle('A', 'P') - angle('A', 'C'),
    },
    'in line': { kind: 'inLine', id: 'k', point: 'P', through: ['D', 'E'] },
    'same radius': { kind: 'sameRadius', id: 'k', points: ['P', 'F'], centre: 'A' },
    'clear by': { kind: 'clearBy', id: 'k', parts: ['A', 'P'], gap: apart('A', 'P') - 2 },
  };

  const movementWith = (rules: readonly RuleInput[]) =>
    buildMovement({
      arbors: [
        ...(['A', 'B', 'C'] as const).map((id) => arbor(id, ...known[id])),
        ...(['P', 'Q', 'S'] as const).map((id, k) => arbor(id, known[id][0] + 0.8 - k, known[id][1] - 0.7 + k)),
      ],
      marks: [
        mark('D', ...lineThroughP),
        mark('E', 2 * known.P[0] - lineThroughP[0], 2 * known.P[1] - lineThroughP[1]),
        mark('F', 0, apart('A', 'P')),
      ],
      wheels: [clockWheel('WA', 'A', 30, 1), clockWheel('WP', 'P', 15, 1)],
      rules: [
        ...(['A', 'B', 'C'] as const).map((id) => held(`h${id}`, id, ...known[id])),
        held('hD', 'D', ...lineThroughP),
        held('hE', 'E', 2 * known.P[0] - lineThroughP[0], 2 * known.P[1] - lineThroughP[1]),
        held('hF', 'F', 0, apart('A', 'P')),
        ...rules,
      ],
    });

  for (const [name, rule] of Object.entries(grounded)) {
    it(name, () => {
      const placed = plantMovement(
        movementWith([
          held('hS', 'S', ...known.S),
          rule,
          distance('pq', 'P', 'Q', apart('P', 'Q')),
          { kind: 'bearing', id: 'dir', point: 'Q', centre: 'P', angle: angle('P', 'Q') },
          distance('qb', 'Q', 'B', apart('Q', 'B')),
        ]),
      );
      for (const id of ['P', 'Q'] as const) {
        expect(placeOf(placed, id).state).toBe('planted');
        expect(placeOf(placed, id).x).toBeCloseTo(known[id][0], 8);
        expect(placeOf(placed, id).y).toBeCloseTo(known[id][1], 8);
      }
      expect(placeOf(placed, 'P').placedBy).toContain('k');
      expect(largestMiss(placed)).toBeLessThan(1e-9);
    });
  }

  it('opposite, and the points it joins', () => {
    // S is Q's image through P; the ground reaches S, P and Q once or twice, never enough for one alone.
    const placed = plantMovement(
      movementWith([
        { kind: 'opposite', id: 'k', point: 'S', centre: 'P', of: 'Q' },
        distance('sa', 'S', 'C', apart('S', 'C')),
        distance('pa', 'P', 'A', apart('P', 'A')),
        distance('qb', 'Q', 'B', apart('Q', 'B')),
        distance('pq', 'P', 'Q', apart('P', 'Q')),
      ]),
    );
    for (const id of ['P', 'Q', 'S'] as const) {
      expect(placeOf(placed, id).state).toBe('planted');
      expect(placeOf(placed, id).x).toBeCloseTo(known[id][0], 8);
      expect(placeOf(placed, id).y).toBeCloseTo(known[id][1], 8);
    }
  });
});
