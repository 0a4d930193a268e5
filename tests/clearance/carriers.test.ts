/** Hands, arms, pins and carriers on carriers, against dense sampling of every angle. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { checkMovement } from '../../solver/clearance/index.ts';
import { plantMovement } from '../../solver/planting/index.ts';
import { arborAt, sceneOf, wheelOf } from './scenes.ts';

/** A limit so wide that every pair within reach is told with its gap. */
const WIDE = { radialGap: 200, heightGap: 0, wallGap: 0 };
/** Heights that nothing else has: arbors are out of the way. */
const ASIDE = { levels: { from: -9, to: -8 } };
const TURN = 2 * Math.PI;

const gapOf = (movement: ReturnType<typeof sceneOf>, parts: readonly string[]): number | undefined =>
  checkMovement(plantMovement(movement)).find(
    (finding) => finding.gaps && parts.every((part) => finding.parts.includes(part as never)), // ids of the scene
  )?.gaps?.asPlanted;

/** Smallest value of a function of angles: every one on a grid, the best of them closed in on. */
function leastOver(count: number, of: (angles: readonly number[]) => number, steps = 24): number {
  let best: number[] = [];
  let least = Number.POSITIVE_INFINITY;
  const total = steps ** count;
  for (let n = 0; n < total; n++) {
    const angles = Array.from({ length: count }, (_, i) => (TURN / steps) * (Math.floor(n / steps ** i) % steps));
    const value = of(angles);
    if (value < least) [least, best] = [value, angles];
  }
  for (let step = TURN / steps; step > 1e-7; step *= 0.6) {
    for (let i = 0; i < count; i++) {
      for (const way of [-step, step]) {
        const angles = best.map((angle, k) => (k === i ? angle + way : angle));
        const value = of(angles);
        if (value < least) [least, best] = [value, angles];
      }
    }
  }
  return least;
}

const length = fc.double({ min: 4, max: 30, noNaN: true });
const direction = fc.double({ min: 0, max: TURN, noNaN: true });

describe('carriers on carriers', () => {
  it('reach what every angle of every arm lets them reach', () => {
    fc.assert(
      fc.property(
        fc.array(fc.tuple(length, direction), { minLength: 1, maxLength: 3 }),
        fc.tuple(fc.double({ min: 0, max: 90, noNaN: true }), direction),
        (arms, [far, to]) => {
          // A chain of axes: each carries the next one; the wheel, Ø 10, stands on the last.
          let [x, y] = [0, 0];
          const axes = [arborAt('A0', 0, 0, ASIDE)];
          arms.forEach(([d, angle], i) => {
            [x, y] = [x + d * Math.cos(angle), y + d * Math.sin(angle)];
            axes.push(arborAt(`A${i + 1}`, x, y, ASIDE));
          });
          const post: [number, number] = [far * Math.cos(to), far * Math.sin(to)];
          const movement = sceneOf({
            limits: WIDE,
            arbors: axes.map(({ arbor }) => arbor),
            rules: [...axes.map(({ rule }) => rule), { id: 'p', kind: 'held', point: 'P', at: post }],
            // So thick that the two are never parted sooner along the arbor.
            wheels: [wheelOf('w', `A${arms.length}`, 10, 2, 400)],
            posts: [{ id: 'P', at: post, diameter: 4, levels: { from: 0, to: 500 } }],
            couplings: arms.map((_, i) => ({ id: `c${i}`, kind: 'carrier', arm: `A${i}`, carries: [`A${i + 1}`] })),
          });
          const sampled = leastOver(arms.length, (angles) => {
            let [px, py] = [0, 0];
            angles.forEach((angle, i) => {
              const d = arms[i]?.[0] ?? 0;
              [px, py] = [px + d * Math.cos(angle), py + d * Math.sin(angle)];
            });
            return Math.hypot(post[0] - px, post[1] - py) - 5 - 2;
          });
          // Sampling misses the deepest overlap; no overlap is deeper than the post is thick.
          const exact = gapOf(movement, ['w', 'P']) ?? Number.NaN;
          if (sampled > 0) expect(exact).toBeCloseTo(sampled, 4);
          else expect(exact).toBeLessThanOrEqual(Math.max(sampled, -4) + 1e-6);
        },
      ),
      { numRuns: 40 },
    );
  });

  it('two wheels on different arms of one carrier meet by their own arms alone', () => {
    // Both small arms, 6 and 8 long, are carried 20 from the middle, a right angle apart: 28.28 between their axes.
    const axes = [
      arborAt('M', 0, 0, ASIDE),
      arborAt('L', 20, 0, ASIDE),
      arborAt('R', 0, 20, ASIDE),
      arborAt('l', 26, 0, ASIDE),
      arborAt('r', 0, 28, ASIDE),
    ];
    const movement = sceneOf({
      limits: WIDE,
      arbors: axes.map(({ arbor }) => arbor),
      rules: axes.map(({ rule }) => rule),
      wheels: [wheelOf('left', 'l', 6, 2), wheelOf('right', 'r', 8, 2), wheelOf('onArm', 'L', 6, 2)],
      couplings: [
        { id: 'm', kind: 'carrier', arm: 'M', carries: ['L', 'R'] },
        { id: 'cl', kind: 'carrier', arm: 'L', carries: ['l'] },
        { id: 'cr', kind: 'carrier', arm: 'R', carries: ['r'] },
      ],
    });
    const sampled = leastOver(2, ([a = 0, b = 0]) => {
      const [lx, ly] = [20 + 6 * Math.cos(a), 6 * Math.sin(a)];
      const [rx, ry] = [8 * Math.cos(b), 20 + 8 * Math.sin(b)];
      return Math.hypot(lx - rx, ly - ry) - 3 - 4;
    });
    expect(gapOf(movement, ['left', 'right'])).toBeCloseTo(sampled, 6);
    // On its own arm's axis nothing comes nearer than it is drawn: 6 apart, radii of 3.
    expect(gapOf(movement, ['left', 'onArm'])).toBeCloseTo(0, 9);
  });

  it('a pipe goes round with the arbor that it rides on', () => {
    const axes = [arborAt('M', 0, 0, ASIDE), arborAt('A', 20, 0, ASIDE)];
    const pipe = { id: 'B', at: [20, 0], diameter: 4, ridesOn: 'A', pipeBore: 2, ...ASIDE };
    const movement = sceneOf({
      limits: WIDE,
      arbors: [...axes.map(({ arbor }) => arbor), pipe],
      rules: [...axes.map(({ rule }) => rule), { id: 'p', kind: 'held', point: 'P', at: [-30, 0] }],
      wheels: [wheelOf('w', 'B', 10, 2)],
      posts: [{ id: 'P', at: [-30, 0], diameter: 4, levels: { from: 0, to: 10 } }],
      couplings: [{ id: 'c', kind: 'carrier', arm: 'M', carries: ['A'] }],
    });
    expect(gapOf(movement, ['w', 'P'])).toBeCloseTo(30 - 20 - 5 - 2, 9);
  });
});

describe('hands, arms and pins', () => {
  it('come as near in a turn as a thin bar does at its worst angle', () => {
    fc.assert(
      fc.property(length, length, fc.double({ min: 1, max: 60, noNaN: true }), direction, (a, b, far, to) => {
        const [nearest, farthest] = [Math.min(a, b), Math.max(a, b) + 0.5];
        const at: [number, number] = [far * Math.cos(to), far * Math.sin(to)];
        const arbor = arborAt('A', 0, 0, {
          ...ASIDE,
          swept: [{ kind: 'arm', nearest, farthest, from: 2, to: 4 }],
        });
        const movement = sceneOf({
          limits: WIDE,
          arbors: [arbor.arbor],
          rules: [arbor.rule, { id: 'p', kind: 'held', point: 'P', at }],
          posts: [{ id: 'P', at, diameter: 3, levels: { from: 0, to: 10 } }],
        });
        const exact = gapOf(movement, ['A', 'P']) ?? Number.NaN;
        const sampled = leastOver(
          1,
          ([angle = 0]) => {
            const [ux, uy] = [Math.cos(angle), Math.sin(angle)];
            const along = Math.min(farthest, Math.max(nearest, at[0] * ux + at[1] * uy));
            return Math.hypot(at[0] - along * ux, at[1] - along * uy) - 1.5;
          },
          360,
        );
        if (sampled > -1.4) expect(exact).toBeCloseTo(sampled, 6);
        else expect(exact).toBeLessThan(-1.4 + 1e-6);
      }),
      { numRuns: 60 },
    );
  });
});
