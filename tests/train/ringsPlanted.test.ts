import { describe, expect, it } from 'vitest';
import type { ArborId } from '../../solver/movement/ids.ts';
import { plantMovement, startDrag } from '../../solver/planting/index.ts';
import { closeRing, meshesOf, meshRings, toothPhases } from '../../solver/train/index.ts';
import { checkRings } from '../../solver/train/turning/ringClosure.ts';
import { sketchMovement } from './turningMovement.ts';

describe('rings of a planted movement', () => {
  const teeth = 32;
  const half = (40 * Math.PI) / 180;
  const corner = { x: teeth * Math.cos(half), y: teeth * Math.sin(half) };
  const movement = sketchMovement({
    wheels: { w0: ['A0', teeth], w1: ['A1', teeth], w2: ['A2', teeth], w3: ['A3', teeth] },
    depths: ['w0 w1', 'w1 w2', 'w2 w3', 'w3 w0'],
    arbors: {
      A0: { at: [-corner.x, 0] },
      A1: { at: [0, corner.y] },
      A2: { at: [corner.x, 0] },
      A3: { at: [0, -corner.y] },
    },
    rules: [
      { kind: 'held', id: 'h0', point: 'A0', at: [-corner.x, 0] },
      { kind: 'held', id: 'h1', point: 'A1', at: [0, corner.y] },
    ],
    drive: { arbor: 'A0', period: { value: 1, unit: 'h' } },
  });

  it('a drag of the planting closes the ring at the nearest place that keeps every rule', () => {
    const placed = plantMovement(movement);
    expect(placed.freeMotions).toBe(1);
    expect(checkRings(movement, placed.places)[0]?.kind).toBe('misses');
    const [ring] = meshRings(meshesOf(movement));
    const id = 'A3' as ArborId;
    const place = placed.places.get(id);
    const way = place?.free[0];
    if (!ring || !place || !way) throw new Error('no ring or no freedom');
    const drag = startDrag(placed, id);
    const cure = closeRing(
      ring,
      placed.places,
      (amount) => drag.to(place.x + amount * way.x, place.y + amount * way.y).places,
    );
    expect(cure.kind).toBe('closes');
    if (cure.kind !== 'closes') return;
    const after = drag.to(place.x + cure.amount * way.x, place.y + cure.amount * way.y);
    expect(checkRings(movement, after.places)[0]?.kind).toBe('closes');
    for (const outcome of after.rules.values()) expect(outcome.missBy).toBeLessThan(1e-9);
    for (const mark of toothPhases(movement, after.places).marks) expect(Math.abs(mark.missTeeth)).toBeLessThan(1e-6);
    expect(cure.moved.map((move) => move.arbor).sort()).toEqual(['A2', 'A3']);
  });
});
