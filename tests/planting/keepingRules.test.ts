/** A drag asked what more rules would come to: the same planting as after the edits themselves. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Edit } from '../../solver/movement/index.ts';
import type { Movement } from '../../solver/movement/schema.ts';
import { plantMovement, startDrag } from '../../solver/planting/index.ts';
import type { PlacedMovement } from '../../solver/planting/placed.ts';
import { pointId } from './buildMovement.ts';
import { applied, linkage, off } from './linkage.ts';
import { randomMovement } from './randomMovement.ts';

/** A rule as an edit adds it. */
type NewRule = Extract<Edit, { kind: 'add'; to: 'rules' }>['item'];

/** The movement after the whole edits that `keeping` spares: sketch places of the drag, the point at (x, y), the rules. */
function fullyEdited(
  start: Movement,
  released: Edit | undefined,
  point: string,
  x: number,
  y: number,
  rules: readonly NewRule[],
): Movement {
  const others = released?.kind === 'move' ? released.places.filter(({ id }) => id !== point) : [];
  const edits: Edit[] = [
    { kind: 'move', places: [...others, { id: pointId(point), at: [x, y] }] },
    ...rules.map((rule): Edit => ({ kind: 'add', to: 'rules', item: rule })),
  ];
  return applied(start, { kind: 'several', edits });
}

function expectSame(one: PlacedMovement, other: PlacedMovement): void {
  expect(one.places.size).toBe(other.places.size);
  for (const { id, x, y, state } of other.places.values()) {
    expect(off(one, id, x, y)).toBeLessThan(1e-9);
    expect(one.places.get(id)?.state).toBe(state);
  }
  expect(one.disagreements.length).toBe(other.disagreements.length);
}

describe('rules that a drag would keep', () => {
  it('plant as after the edits (random movements: a rule taken back, measured anew, or one too many)', () => {
    let kept = 0;
    let refused = 0;
    fc.assert(
      fc.property(
        fc.integer({ min: 0, max: 2 ** 31 }),
        fc.integer({ min: 4, max: 16 }),
        fc.nat(),
        fc.double({ min: -3, max: 3, noNaN: true }),
        fc.double({ min: -3, max: 3, noNaN: true }),
        fc.constantFrom('back', 'measured', 'wrong'),
        (seed, count, which, dx, dy, way) => {
          const { movement } = randomMovement(seed, count);
          const left = movement.rules[which % movement.rules.length];
          if (!left) throw new Error('a random movement has rules');
          const loose = {
            ...movement,
            rules: movement.rules.map((rule) => (rule === left ? { ...rule, leaveOut: true } : rule)),
          };
          const start = plantMovement(loose);
          const place = [...start.places.values()].find(({ state }) => state === 'loose');
          if (!place) throw new Error('nothing is loose');
          const drag = startDrag(start, place.id);
          const dragged = drag.to(place.x + dx, place.y + dy);
          const at = dragged.places.get(place.id);
          if (!at) throw new Error('the point is gone');
          const other = [...start.places.values()].find(({ id }) => id !== place.id);
          if (!other) throw new Error('there is one more point');
          const length = Math.hypot(at.x - other.x, at.y - other.y);
          const back = { ...left, id: 'back' };
          const measured = { id: 'more', kind: 'distance', points: [place.id, other.id], length };
          const rules = {
            back: [back],
            measured: [measured],
            wrong: [back, { ...measured, length: length + 0.5 }],
          }[way] as unknown as readonly NewRule[]; // ids are texts
          const full = fullyEdited(loose, drag.release(), place.id, at.x, at.y, rules);
          const keeping = drag.keeping(full.rules.slice(loose.rules.length), at.x, at.y);
          const after = plantMovement(full);
          if (keeping) {
            kept++;
            expectSame(keeping, after);
            return;
          }
          // Not kept on this branch: the edits lead to a disagreement, or turn over what the drag had not.
          const isTurned = [...dragged.places.values()].some(({ id, x, y }) => off(after, id, x, y) > 1e-3);
          refused++;
          expect(after.disagreements.length > start.disagreements.length || isTurned).toBe(true);
        },
      ),
      { numRuns: 100 },
    );
    expect(kept).toBeGreaterThan(40);
    expect(refused).toBeGreaterThan(0);
  });

  it('plant as after the edits where the point cannot be dragged, too', () => {
    const movement = linkage([]);
    const drag = startDrag(plantMovement(movement), pointId('A'));
    const more = [{ id: 'more', kind: 'distance', points: ['A', 'P'], length: 25 } as unknown as NewRule]; // ids are texts
    const full = fullyEdited(movement, drag.release(), 'A', 3, 4, more);
    const kept = drag.keeping(full.rules.slice(-1), 3, 4);
    if (!kept) throw new Error('a point that is held takes the rule of another');
    expectSame(kept, plantMovement(full));
  });
});
