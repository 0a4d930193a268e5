/** The drawing of teeth: profiles close over a pitch and keep to tip and root; strokes are packed one record each. */

import { describe, expect, it } from 'vitest';
import { packStrokes, RECORD } from '../../renderer/bench/strokes/packing.ts';
import { PROFILE_POINTS } from '../../renderer/state/derive/wheelShape.ts';
import { profileOf, shapesOf } from '../../renderer/state/derive/wheelShapes.ts';
import type { Movement } from '../../solver/movement/schema.ts';
import { formOfWheel } from '../../solver/teeth/index.ts';
import { movementOfParts } from '../support/movements.ts';

function movementOf(wheels: readonly object[], rules: readonly object[] = []): Movement {
  return movementOfParts({
    arbors: [
      { id: 'a', at: [0, 0] },
      { id: 'b', at: [40, 30] },
    ],
    wheels,
    rules,
  });
}

const wheel = (id: string, arbor: string, teeth: number, form = 'involute') => ({
  id,
  arbor,
  teeth,
  size: { module: 0.8 },
  form,
  level: 0,
  thickness: 2,
});

describe('tooth profiles', () => {
  it.each(['involute', 'cycloidal', 'triangular'] as const)('%s: from space to space, between root and tip', (form) => {
    const movement = movementOf([wheel('w', 'a', 48, form)]);
    const [first] = movement.wheels;
    const made = first && formOfWheel(first, movement);
    if (made?.kind !== 'teeth') throw new Error('no teeth');
    const profile = profileOf(made);
    expect(profile).toHaveLength(2 * PROFILE_POINTS);
    const at = (i: number) => ({
      radius: Math.hypot(profile[2 * i] ?? 0, profile[2 * i + 1] ?? 0),
      angle: Math.atan2(profile[2 * i + 1] ?? 0, profile[2 * i] ?? 0),
    });
    expect(at(0).angle).toBeCloseTo(-Math.PI / 48, 6);
    expect(at(PROFILE_POINTS - 1).angle).toBeCloseTo(Math.PI / 48, 6);
    const radii = Array.from({ length: PROFILE_POINTS }, (_, i) => at(i).radius);
    expect(Math.min(...radii)).toBeCloseTo(made.root, 5);
    expect(Math.max(...radii)).toBeCloseTo(made.tip, 5);
    for (let i = 0; i < PROFILE_POINTS; i++) {
      expect(at(i).angle).toBeCloseTo(-at(PROFILE_POINTS - 1 - i).angle, 5);
    }
  });

  it('keeps the same shapes for the same wheels, and shares equal profiles', () => {
    const movement = movementOf([wheel('w', 'a', 48), wheel('v', 'b', 48)]);
    const shapes = shapesOf(movement);
    expect(shapes.get('w')?.profile).toBe(shapes.get('v')?.profile);
    expect(shapesOf({ ...movement, title: 'other' }, shapes)).toBe(shapes);
  });
});

describe('packing', () => {
  it('gives each stroke one record, arcs and lines apart', () => {
    const { arcs, lines } = packStrokes(
      [
        { kind: 'arc', x: 1, y: 2, radius: 3, pen: 'ink', width: 1 },
        { kind: 'line', x0: 1, y0: 2, x1: 3, y1: 4, pen: 'scribe', width: 2, type: 'dashed', from: 0.5 },
        { kind: 'arc', x: 0, y: 0, radius: 5, pen: 'soft', width: 1, band: 2, type: 'hatched' },
      ],
      7,
    );
    expect(arcs).toHaveLength(2 * RECORD);
    expect([...arcs.subarray(0, 9)]).toEqual([1, 2, 3, 0, 0, Math.fround(2 * Math.PI), 1, 0, 7]);
    expect([...lines.subarray(0, 4), lines[8], lines[9], lines[10], lines[12]]).toEqual([
      1,
      2,
      3,
      4,
      7,
      4 + 48,
      0.5,
      2,
    ]);
  });
});
