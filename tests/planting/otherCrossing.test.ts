/** The other crossing of a point, chosen and chosen back. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Movement } from '../../solver/movement/schema.ts';
import { otherCrossing, plantMovement } from '../../solver/planting/index.ts';
import { arbor, buildMovement, distance, held, placeOf, pointId } from './buildMovement.ts';
import { applied, linkage, off } from './linkage.ts';
import { randomMovement } from './randomMovement.ts';

describe('the other crossing', () => {
  const select = (movement: Movement, id: string): Movement => {
    const other = otherCrossing(movement, pointId(id));
    if (!other) throw new Error('there is no other crossing');
    return applied(movement, {
      kind: 'several',
      edits: [
        { kind: 'move', places: [{ id: other.point, at: [other.at.x, other.at.y] }] },
        { kind: 'setCrossing', point: other.point, ...(other.crossing ? { crossing: other.crossing } : {}) },
      ],
    });
  };

  it('of two arcs is recorded by a side and comes back when chosen again', () => {
    const movement = linkage([held('r', 'R', 40, 40), distance('1', 'A', 'P', 30), distance('2', 'R', 'P', 35)]);
    const first = placeOf(plantMovement(movement), 'P');
    const changed = select(movement, 'P');
    const second = placeOf(plantMovement(changed), 'P');
    expect(second.x).toBeCloseTo(first.other?.x ?? Number.NaN, 9);
    expect(second.y).toBeCloseTo(first.other?.y ?? Number.NaN, 9);
    const recorded = changed.arbors.find(({ id }) => id === 'P')?.crossing;
    expect(recorded && new Set([recorded.from, recorded.to])).toEqual(new Set(['A', 'R']));
    const back = placeOf(plantMovement(select(changed, 'P')), 'P');
    expect(back.x).toBeCloseTo(first.x, 9);
    expect(back.y).toBeCloseTo(first.y, 9);
  });

  it('holds by the recorded side alone, whatever the sketch', () => {
    const movement = linkage([held('r', 'R', 40, 40), distance('1', 'A', 'P', 30), distance('2', 'R', 'P', 35)]);
    const other = otherCrossing(movement, pointId('P'));
    const sketchKept = applied(movement, {
      kind: 'setCrossing',
      point: 'P',
      ...(other?.crossing ? { crossing: other.crossing } : {}),
    });
    expect(off(plantMovement(sketchKept), 'P', other?.at.x ?? 0, other?.at.y ?? 0)).toBeLessThan(1e-9);
  });

  it('of a line through the centre of an arc, and of an edge of the case', () => {
    const through = linkage([
      held('r', 'R', 40, 40),
      distance('1', 'A', 'P', 30),
      { kind: 'inLine', id: 'l', point: 'P', through: ['A', 'R'] },
    ]);
    const first = placeOf(plantMovement(through), 'P');
    const second = placeOf(plantMovement(select(through, 'P')), 'P');
    expect(second.x).toBeCloseTo(-first.x, 9);
    expect(second.y).toBeCloseTo(-first.y, 9);

    const vertices = [
      { x: 20, y: -90 },
      { x: 90, y: -90 },
      { x: 90, y: 90 },
      { x: 20, y: 90 },
    ];
    const base = linkage([
      distance('1', 'A', 'P', 30),
      { kind: 'clearBy', id: 'c', parts: ['P', 'W'], gap: 4, edge: 3 },
    ]);
    const edge = applied(applied(base, { kind: 'leaveOut', rules: [], leaveOut: true }), {
      kind: 'add',
      to: 'walls',
      item: { id: 'W', outline: { kind: 'path', vertices }, levels: { from: 0, to: 3 } },
    });
    const up = placeOf(plantMovement(edge), 'P');
    expect(up.x).toBeCloseTo(15, 9);
    expect(placeOf(plantMovement(select(edge, 'P')), 'P').y).toBeCloseTo(-up.y, 9);
  });

  it('of a pipe is that of its arbor; held and loose points have none', () => {
    const movement = buildMovement({
      arbors: [
        arbor('A', 0, 0),
        arbor('R', 40, 40),
        { ...arbor('pipe', 30, 1), ridesOn: 'P' },
        arbor('P', 30, 1),
        arbor('L', 9, 9),
      ],
      rules: [
        held('a', 'A', 0, 0),
        held('r', 'R', 40, 40),
        distance('1', 'A', 'pipe', 30),
        distance('2', 'R', 'P', 35),
      ],
    });
    const other = otherCrossing(movement, pointId('pipe'));
    expect(other).toBeDefined();
    expect(off(plantMovement(select(movement, 'pipe')), 'pipe', other?.at.x ?? 0, other?.at.y ?? 0)).toBeLessThan(1e-9);
    expect(otherCrossing(movement, pointId('A'))).toBeUndefined();
    expect(otherCrossing(movement, pointId('L'))).toBeUndefined();
  });

  it('holds for random movements wherever one is offered', () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 2 ** 31 }), fc.integer({ min: 4, max: 16 }), (seed, count) => {
        const { movement } = randomMovement(seed, count);
        const placed = plantMovement(movement);
        for (const place of placed.places.values()) {
          const other = otherCrossing(placed, place.id);
          if (!other) continue;
          const again = plantMovement(select(movement, place.id));
          expect(off(again, other.point, other.at.x, other.at.y)).toBeLessThan(1e-7);
        }
      }),
      { numRuns: 40 },
    );
  });
});
