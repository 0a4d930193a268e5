/** A bowl with three soldered supports: contact that is wanted, the camber of a foot, and sliding along the wall. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { camberHeight, checkMovement, remediesFor, wallContacts } from '../../solver/clearance/index.ts';
import { safeAlongWall, slideToSafe } from '../../solver/clearance/safe/index.ts';
import type { PostId } from '../../solver/movement/ids.ts';
import { applyEdit } from '../../solver/movement/index.ts';
import type { Movement } from '../../solver/movement/schema.ts';
import { plantMovement } from '../../solver/planting/index.ts';
import { arborAt, sceneOf, wheelOf } from './scenes.ts';
import { wordsOf } from './wordsOf.ts';

const P = 'p0' as PostId; // an id of the scene

/** A bowl of 60 inside with supports of 6 that touch it at 10°, 130° and 250°, and a wheel of 30 at (42, 0). */
function bowl(radius = 57, more: object = {}): Movement {
  const a = arborAt('A', 42, 0, { levels: { from: 0, to: 10 } });
  const supports = [10, 130, 250].map((angle, i) => {
    const turn = (angle * Math.PI) / 180;
    const at = [radius * Math.cos(turn), radius * Math.sin(turn)];
    const fixedTo = { wall: 'bowl', how: 'soldered', ...more };
    return { id: `p${i}`, at, diameter: 6, levels: { from: 0, to: 20 }, fixedTo };
  });
  return sceneOf({
    arbors: [a.arbor],
    wheels: [wheelOf('w', 'A', 30, 4)],
    posts: supports,
    walls: [
      {
        id: 'bowl',
        outline: { kind: 'circle', centre: [0, 0], radius: 62 },
        inner: { kind: 'circle', centre: [0, 0], radius: 60 },
        levels: { from: 0, to: 40 },
      },
    ],
    rules: [a.rule, ...supports.map(({ id, at }) => ({ id: `h${id}`, kind: 'held', point: id, at }))],
  });
}

describe('supports soldered to a wall', () => {
  it('touch it without being told, and their feet get its curve', () => {
    const placed = plantMovement(bowl());
    expect(checkMovement(placed).filter(({ parts }) => parts.includes('bowl' as never))).toEqual([]);
    const [first] = wallContacts(placed);
    expect(first?.gap).toBeCloseTo(0, 9);
    // The sagitta of a chord of 6 on a circle of 60.
    expect(first?.camber).toMatchObject({
      radius: 60,
      width: 6,
      height: expect.closeTo(60 - Math.sqrt(60 ** 2 - 3 ** 2), 12),
    });
  });

  it('a support said to be soldered to a wall 5 away is named with the figure, and moved up to it', () => {
    const placed = plantMovement(bowl(52));
    const [finding] = checkMovement(placed).filter(({ cause }) => cause.kind === 'noContact');
    if (!finding) throw new Error('not found');
    expect(finding.gap).toBeCloseTo(5, 9);
    expect(wordsOf(placed.movement).finding(finding)).toMatch(/is soldered to wall 1 and stands 5\.000 mm from it/);
    const second = checkMovement(placed).find(({ key }) => key === 'post contact p1 bowl');
    const [remedy] = second ? remediesFor(placed, second) : [];
    const after = plantMovement(remedy?.movement ?? placed.movement);
    expect(wallContacts(after)[1]?.gap).toBeCloseTo(0, 9);
  });

  it('one that stands in the metal beyond its allowance is told, one within it is not', () => {
    const told = (radius: number, more: object = {}): readonly string[] =>
      checkMovement(plantMovement(bowl(radius, more)))
        .map(({ cause }) => cause.kind)
        .filter((kind) => kind === 'noContact');
    expect(told(57.05)).toEqual([]);
    expect(told(57.3)).toHaveLength(3);
    expect(told(57.3, { allowance: 0.4 })).toEqual([]);
  });

  it('slides along its wall by one angle to where it clears the wheel, in degrees and in millimetres of wall', () => {
    const placed = plantMovement(bowl());
    const safe = safeAlongWall(placed, P);
    const [stretch] = safe?.stretches ?? [];
    if (!safe || !stretch) throw new Error('there is a safe stretch');
    // Nearer than 15 + 3 + 0.5 to the wheel's axis at 42: cos θ = (57² + 42² − 18.5²)/(2·57·42).
    const edge = Math.acos((57 ** 2 + 42 ** 2 - 18.5 ** 2) / (2 * 57 * 42));
    expect(stretch.start).toBeCloseTo(edge, 6);
    expect(stretch.length).toBeCloseTo(stretch.sweep * 60, 9);
    const slide = slideToSafe(placed, P);
    const edited = slide && applyEdit(placed.movement, slide.edit);
    if (edited?.kind !== 'edited') throw new Error('it slides');
    const after = plantMovement(edited.movement);
    const at = after.places.get(P);
    expect(Math.hypot(at?.x ?? 0, at?.y ?? 0)).toBeCloseTo(57, 9);
    expect(wallContacts(after)[0]?.gap).toBeCloseTo(0, 9);
    expect(checkMovement(after).filter(({ parts }) => parts.includes(P))).toEqual([]);
  });

  it('the arc of a foot is the sagitta, against the circle itself', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 1, max: 500, noNaN: true }),
        fc.double({ min: 0, max: 1, noNaN: true }),
        (radius, share) => {
          const width = 2 * radius * share;
          const height = camberHeight(radius, width);
          expect(height).toBeDefined();
          // The middle of the chord is so far from the centre; with half the chord it comes to the radius.
          expect(Math.hypot(radius - (height ?? 0), width / 2)).toBeCloseTo(radius, 6);
        },
      ),
    );
    expect(camberHeight(5, 11)).toBeUndefined();
  });
});
