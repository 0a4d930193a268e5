import { describe, expect, it } from 'vitest';
import { checkMovement } from '../../solver/clearance/index.ts';
import { canSlide, safePlacesOf, slideToSafe } from '../../solver/clearance/safe/index.ts';
import type { PointId } from '../../solver/movement/ids.ts';
import { applyEdit } from '../../solver/movement/index.ts';
import { plantMovement } from '../../solver/planting/index.ts';
import { arborAt, sceneOf, wheelOf } from './scenes.ts';

const B = 'B' as PointId;
const heights = { levels: { from: 20, to: 21 } };

/** A wheel on a circle of 35 about A, and a post of 6 at (35, 0) in its way. */
function onCircle(angleDeg: number) {
  const a = arborAt('A', 0, 0, heights);
  const angle = (angleDeg * Math.PI) / 180;
  return sceneOf({
    arbors: [
      a.arbor,
      { id: 'B', at: [35 * Math.cos(angle), 35 * Math.sin(angle)], diameter: 2, levels: { from: 0, to: 2 } },
    ],
    rules: [
      a.rule,
      { id: 'r', kind: 'radius', point: 'B', centre: 'A', length: 35 },
      { id: 'p', kind: 'held', point: 'P', at: [35, 0] },
    ],
    wheels: [wheelOf('b', 'B', 20, 0)],
    posts: [{ id: 'P', at: [35, 0], diameter: 6, levels: { from: 0, to: 10 } }],
  });
}

// Tips 10, post 3, gap 0.5: centres 13.5 apart, seen from A under 2·asin(13.5/70).
const edge = 2 * Math.asin(13.5 / 70);

describe('safe places of a loose arbor', () => {
  it('with one free motion are the pieces of its curve, their ends where the gap is just kept', () => {
    const placed = plantMovement(onCircle(90));
    const safe = safePlacesOf(placed, B, { step: 1 });
    if (safe.kind !== 'curve') throw new Error(safe.kind);
    const angles = safe.pieces.flat().map(({ x, y }) => Math.abs(Math.atan2(y, x)));
    expect(Math.min(...angles)).toBeCloseTo(edge, 5);
    for (const { x, y } of safe.pieces.flat()) expect(Math.hypot(x, y)).toBeCloseTo(35, 9);
    expect(Math.max(...angles)).toBeGreaterThan(3);
  });

  it('on a circle that a rule keeps just clear are one piece, walked once all round', () => {
    const a = arborAt('A', -22.205, -4.381);
    const movement = sceneOf({
      arbors: [a.arbor, { id: 'B', at: [12.558, 20.068], diameter: 3 }],
      rules: [a.rule, { id: 'c', kind: 'clearBy', parts: ['b', 'a'], gap: 0.5 }],
      wheels: [wheelOf('a', 'A', 62, 2), wheelOf('b', 'B', 22, 2)],
    });
    const safe = safePlacesOf(plantMovement(movement), B);
    if (safe.kind !== 'curve') throw new Error(safe.kind);
    expect(safe.pieces).toHaveLength(1);
    const [piece = []] = safe.pieces;
    const length = piece.reduce((sum, { x, y }, i) => {
      const before = piece[i - 1];
      return before ? sum + Math.hypot(x - before.x, y - before.y) : 0;
    }, 0);
    // Tips 31 and 11 and the gap: a circle of 42.5 about A; less than a step is left open where both ways meet.
    expect(length).toBeGreaterThan(2 * Math.PI * 42.5 - 1);
    expect(length).toBeLessThanOrEqual(2 * Math.PI * 42.5 + 0.5);
  });

  it('slides to the nearest of them as one edit', () => {
    const movement = onCircle(10);
    const placed = plantMovement(movement);
    expect(checkMovement(placed).map(({ kind }) => kind)).toEqual(['fouls']);
    const slide = slideToSafe(placed, B);
    if (!slide) throw new Error('there is a safe place');
    const edited = applyEdit(movement, slide.edit);
    if (edited.kind === 'refused') throw new Error(JSON.stringify(edited.why));
    const after = plantMovement(edited.movement);
    expect(checkMovement(after)).toEqual([]);
    const at = after.places.get(B);
    expect(Math.atan2(at?.y ?? 0, at?.x ?? 1)).toBeCloseTo(edge, 4);
  });

  it('with two are a region: just the cells that keep the gap, checked one by one', () => {
    const movement = sceneOf({
      arbors: [{ id: 'B', at: [20, 20], diameter: 2, ...heights }],
      rules: [{ id: 'p', kind: 'held', point: 'P', at: [0, 0] }],
      wheels: [wheelOf('b', 'B', 20, 0)],
      posts: [{ id: 'P', at: [0, 0], diameter: 6, levels: { from: 0, to: 10 } }],
      walls: [
        {
          id: 'drum',
          outline: { kind: 'circle', centre: [0, 0], radius: 45 },
          inner: { kind: 'circle', centre: [0, 0], radius: 42 },
          levels: { from: -5, to: 20 },
        },
      ],
    });
    const safe = safePlacesOf(plantMovement(movement), B, { step: 2 });
    if (safe.kind !== 'region') throw new Error(safe.kind);
    const expected: string[] = [];
    for (let x = -42; x <= 42; x += 2) {
      for (let y = -42; y <= 42; y += 2) {
        const d = Math.hypot(x, y);
        if (d >= 13.5 && d <= 31.5) expected.push(`${x} ${y}`);
      }
    }
    const found = safe.middles.map(({ x, y }) => `${Math.round(x)} ${Math.round(y)}`);
    expect(found.sort()).toEqual(expected.sort());
  });

  it('a planted arbor has none to offer', () => {
    expect(safePlacesOf(plantMovement(onCircle(90)), 'A' as PointId)).toMatchObject({ kind: 'none' });
  });
});

describe('safe arcs of a post that stands on a circle', () => {
  const P = 'P' as PointId; // an id of the scene
  /** A wheel of 30 at (35, 0); a post of 6 on a circle of 40 about A, with a head of 10 at the wheel's height. */
  const post = (angle: number, head: boolean) => {
    const [a, b] = [arborAt('A', 0, 0, heights), arborAt('B', 35, 0, { levels: { from: 0, to: 2 } })];
    const at = [40 * Math.cos((angle * Math.PI) / 180), 40 * Math.sin((angle * Math.PI) / 180)];
    return sceneOf({
      arbors: [a.arbor, b.arbor],
      rules: [
        a.rule,
        b.rule,
        { id: 'r', kind: 'radius', point: 'P', centre: 'A', length: 40 },
        { id: 'g', kind: 'bearing', point: 'P', centre: 'A', angle },
      ],
      wheels: [wheelOf('b', 'B', 30, 0)],
      posts: [
        {
          id: 'P',
          at,
          diameter: 6,
          levels: { from: -5, to: 15 },
          ...(head ? { heads: [{ diameter: 10, from: 1, to: 3 }] } : {}),
        },
      ],
    });
  };
  /** Angle at A at which the post's centre is so far from B, by the law of cosines. */
  const angleAt = (apart: number): number => Math.acos((40 ** 2 + 35 ** 2 - apart ** 2) / (2 * 40 * 35));

  it.each([
    { head: false, apart: 15 + 3 + 0.5 },
    { head: true, apart: 15 + 5 + 0.5 },
  ])('end where the post, or its head ($head), just keeps the gap', ({ head, apart }) => {
    const placed = plantMovement(post(120, head));
    expect(canSlide(placed, P)).toBe(true);
    const safe = safePlacesOf(placed, P);
    if (safe.kind !== 'curve') throw new Error(safe.kind);
    const angles = safe.pieces.flat().map(({ x, y }) => Math.abs(Math.atan2(y, x)));
    expect(Math.min(...angles)).toBeCloseTo(angleAt(apart), 5);
  });

  it('the post is slid to the nearest of them by its own rule', () => {
    const movement = post(10, true);
    const placed = plantMovement(movement);
    expect(checkMovement(placed).map(({ kind }) => kind)).toEqual(['fouls']);
    const slide = slideToSafe(placed, P);
    if (!slide) throw new Error('there is a safe place');
    const edited = applyEdit(movement, slide.edit);
    if (edited.kind === 'refused') throw new Error(JSON.stringify(edited.why));
    const after = plantMovement(edited.movement);
    expect(checkMovement(after)).toEqual([]);
    const at = after.places.get(P);
    expect(Math.atan2(at?.y ?? 0, at?.x ?? 1)).toBeCloseTo(angleAt(20.5), 4);
    expect(slideToSafe(after, P)).toBeUndefined();
  });

  it('are not asked of what stands on no circle', () => {
    const placed = plantMovement(onCircle(90));
    expect(canSlide(placed, P)).toBe(false);
    expect(safePlacesOf(placed, P)).toMatchObject({ kind: 'none' });
  });
});
