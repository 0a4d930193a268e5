import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { planGapOf } from '../../solver/clearance/gaps/planGap.ts';
import { checkMovement, gapBetween, solidsOf } from '../../solver/clearance/index.ts';
import type { PartId } from '../../solver/movement/ids.ts';
import { plantMovement } from '../../solver/planting/index.ts';
import { arborAt, sceneOf, twoWheels, wheelOf } from './scenes.ts';
import { wordsOf } from './wordsOf.ts';

const findingsOf = (movement: Parameters<typeof plantMovement>[0]) =>
  checkMovement(plantMovement(movement)).filter((finding) => finding.gap !== undefined);

describe('gaps between wheels on different arbors', () => {
  // Tip diameters 40 and 30: the tips touch at 35 mm. Limits: 0.5 aside, 0.3 in height.
  it.each([
    { apart: 35.6, second: 0, kind: undefined, gap: undefined, why: 'wide enough aside' },
    { apart: 35.2, second: 0, kind: 'tooClose', gap: 0.2, why: 'aside below the limit' },
    { apart: 34.5, second: 0, kind: 'fouls', gap: -0.5, why: 'tips overlap' },
    { apart: 34.5, second: 2.3, kind: undefined, gap: undefined, why: 'one passes over the other by the limit' },
    { apart: 34.5, second: 2.1, kind: 'tooClose', gap: 0.1, why: 'passes over by too little' },
    { apart: 34.5, second: 2, kind: 'tooClose', gap: 0, why: 'faces touch' },
    {
      apart: 34.5,
      second: 1.9,
      kind: 'fouls',
      gap: -0.1,
      why: 'they share a tenth of height: the least movement that parts them',
    },
    { apart: 34.5, second: 1.4, kind: 'fouls', gap: -0.5, why: 'they share more height than their tips overlap' },
    { apart: 35.2, second: 2.1, kind: 'tooClose', gap: Math.hypot(0.2, 0.1), why: 'corner to corner' },
    { apart: 35.2, second: -2.3, kind: undefined, gap: undefined, why: 'under it by the limit' },
  ])('$apart apart, the second at $second: $why', ({ apart, second, kind, gap }) => {
    const [finding, ...rest] = findingsOf(twoWheels(apart, [40, 0, 2], [30, second, 2]));
    expect(rest).toEqual([]);
    expect(finding?.kind).toBe(kind);
    if (gap !== undefined) expect(finding?.gap).toBeCloseTo(gap, 9);
    if (kind) expect(finding?.parts).toEqual(['a', 'b']);
  });

  it('a pair in mesh is exempt from each other only: the third wheel is still told', () => {
    const [a, b, c] = [arborAt('A', 0, 0), arborAt('B', 33, 0), arborAt('C', 10, 8)];
    const movement = sceneOf({
      arbors: [a.arbor, b.arbor, c.arbor],
      rules: [a.rule, b.rule, c.rule, { id: 'mesh', kind: 'depth', wheels: ['a', 'b'] }],
      wheels: [wheelOf('a', 'A', 40, 0), wheelOf('b', 'B', 30, 0), wheelOf('c', 'C', 12, 0, 1)],
    });
    const pairs = findingsOf(movement).map((finding) => [...finding.parts].sort().join(' '));
    expect(pairs).toContain('a c');
    expect(pairs).not.toContain('a b');
  });

  it('two wheels on one arbor may touch, not share a height', () => {
    const a = arborAt('A', 0, 0);
    const scene = (level: number) =>
      sceneOf({ arbors: [a.arbor], rules: [a.rule], wheels: [wheelOf('a', 'A', 40, 0), wheelOf('b', 'A', 10, level)] });
    expect(findingsOf(scene(2))).toEqual([]);
    const [finding, ...rest] = findingsOf(scene(1.5));
    expect(rest).toEqual([]);
    expect(finding).toMatchObject({
      kind: 'fouls',
      gap: -0.5,
      wanted: 0,
    });
    const says = finding && wordsOf(scene(1.5)).finding(finding);
    expect(says).toBe('A (a) and b stand in each other: their levels overlap by 0.500 mm.');
    // Shown at the rim of the smaller wheel, not across the larger one.
    for (const { x, y } of finding?.at ?? []) expect(Math.hypot(x, y)).toBeCloseTo(5, 9);
    const placed = plantMovement(scene(1.5));
    expect(gapBetween(placed, 'a' as PartId, 'b' as PartId)).toMatchObject({ gap: -0.5, direction: 'height' });
  });
});

describe('gaps to arbors, posts and walls', () => {
  it('a wheel against a bare arbor and a thicker pipe: the worked numbers of the two-depth example', () => {
    // 28.8 between axes, tip radius 25.104: 1.696 to an arbor of 4, −0.304 to a pipe of 8 [derived in practice notes].
    const scene = (diameter: number) => {
      const a = arborAt('A', 0, 0, { levels: { from: -5, to: 10 } });
      const b = arborAt('B', 28.8, 0, { diameter, levels: { from: -5, to: 10 } });
      return sceneOf({
        arbors: [a.arbor, b.arbor],
        rules: [a.rule, b.rule],
        wheels: [wheelOf('a', 'A', 50.208, 0)],
      });
    };
    const gap = (diameter: number) => gapBetween(plantMovement(scene(diameter)), 'a' as PartId, 'B' as PartId)?.gap;
    expect(gap(4)).toBeCloseTo(1.696, 9);
    expect(gap(8)).toBeCloseTo(-0.304, 9);
    expect(findingsOf(scene(8)).map(({ kind, parts }) => [kind, ...parts])).toEqual([['fouls', 'a', 'B']]);
  });

  it('the arbor inside its own pinion is not told twice: the pinion is what the wheel meets', () => {
    const a = arborAt('A', 0, 0);
    const b = arborAt('B', 22, 0, { diameter: 5, levels: { from: -5, to: 10 } });
    const movement = sceneOf({
      arbors: [a.arbor, b.arbor],
      rules: [a.rule, b.rule, { id: 'mesh', kind: 'depth', wheels: ['a', 'b'] }],
      wheels: [wheelOf('a', 'A', 38, 0), wheelOf('b', 'B', 10, -1, 4)],
    });
    expect(findingsOf(movement)).toEqual([]);
  });

  it('inside a drum the gap is to its inner side; a wheel that reaches the metal fouls by how far it must come back', () => {
    const scene = (x: number) => {
      const a = arborAt('A', x, 0);
      return sceneOf({
        arbors: [a.arbor],
        rules: [a.rule],
        wheels: [wheelOf('a', 'A', 40, 0)],
        walls: [
          {
            id: 'drum',
            name: 'Drum',
            outline: { kind: 'circle', centre: [0, 0], radius: 53 },
            inner: { kind: 'circle', centre: [0, 0], radius: 50 },
            levels: { from: -10, to: 20 },
          },
        ],
      });
    };
    expect(findingsOf(scene(29))).toEqual([]);
    expect(findingsOf(scene(29.8)).map((f) => f.gap)).toEqual([expect.closeTo(0.2, 9)]);
    const [fouls] = findingsOf(scene(30.4));
    expect(fouls?.kind).toBe('fouls');
    expect(fouls?.gap).toBeCloseTo(-0.4, 9);
    expect(fouls && wordsOf(scene(30.4)).finding(fouls)).toBe('A (a) and Drum foul by 0.400 mm.');
  });

  it('worst first, and an accepted finding stays away until its gap changes', () => {
    const [a, b, c] = [arborAt('A', 0, 0), arborAt('B', 34.5, 0), arborAt('C', 0, 35.2)];
    const parts = {
      arbors: [a.arbor, b.arbor, c.arbor],
      rules: [a.rule, b.rule, c.rule],
      wheels: [wheelOf('a', 'A', 40, 0), wheelOf('b', 'B', 30, 0), wheelOf('c', 'C', 30, 0)],
    };
    const findings = findingsOf(sceneOf(parts));
    expect(findings.map(({ kind }) => kind)).toEqual(['fouls', 'tooClose']);
    const accepted = (gap: number) => [{ finding: 'tooClose', parts: ['c', 'a'], gap, reason: 'guarded by a rim' }];
    expect(findingsOf(sceneOf({ ...parts, accepted: accepted(0.2) })).map(({ kind }) => kind)).toEqual(['fouls']);
    expect(findingsOf(sceneOf({ ...parts, accepted: accepted(0.25) })).length).toBe(2);
  });
});

describe('the search for pairs', () => {
  it('finds every pair that comparing all with all finds', () => {
    const wheel = fc.record({
      x: fc.integer({ min: -60, max: 60 }),
      y: fc.integer({ min: -60, max: 60 }),
      tip: fc.integer({ min: 8, max: 60 }),
      level: fc.integer({ min: 0, max: 8 }),
    });
    fc.assert(
      fc.property(fc.array(wheel, { minLength: 2, maxLength: 12 }), (list) => {
        const placed = plantMovement(
          sceneOf({
            arbors: list.map(({ x, y }, i) => ({ id: `A${i}`, at: [x + i / 100, y], levels: { from: 20, to: 21 } })),
            rules: list.map(({ x, y }, i) => ({ id: `r${i}`, kind: 'held', point: `A${i}`, at: [x + i / 100, y] })),
            wheels: list.map(({ tip, level }, i) => wheelOf(`w${i}`, `A${i}`, tip, level)),
          }),
        );
        const found = new Set(
          checkMovement(placed)
            .filter((f) => f.gap !== undefined && f.parts.every((part) => part.startsWith('w')))
            .map((f) => [...f.parts].sort().join(' ')),
        );
        const solids = solidsOf(placed).filter((solid) => solid.role === 'wheel');
        const expected = new Set<string>();
        for (const a of solids) {
          for (const b of solids) {
            if (a.index >= b.index) continue;
            const plan = planGapOf(a, b)?.gap ?? 0;
            const height = Math.max(b.heights.from - a.heights.to, a.heights.from - b.heights.to);
            // Whole levels: shared, touching, or at least 1 apart.
            if (plan < 0.5 - 1e-6 && height <= 0) expected.add([a.part, b.part].sort().join(' '));
          }
        }
        expect(found).toEqual(expected);
      }),
      { numRuns: 60 },
    );
  });
});
