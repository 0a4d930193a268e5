import { describe, expect, it } from 'vitest';
import { rehearsalOf, rehearse } from '../../solver/clearance/index.ts';
import { plantMovement } from '../../solver/planting/index.ts';
import { sceneOf } from './scenes.ts';

/** Two involute wheels of module 1 at a depth, in holes 0.02 larger than their pivots. */
function pair(teeth: readonly [number, number], off: number, form = 'involute') {
  const distance = (teeth[0] + teeth[1]) / 2 + off;
  const bearings = [-5, 8].map((at) => ({ at, bore: 1.02, pivot: 1, length: 2 }));
  return plantMovement(
    sceneOf({
      arbors: [0, 1].map((i) => ({ id: `A${i}`, at: [i * distance, 0], diameter: 2, bearings })),
      wheels: [0, 1].map((i) => ({
        id: `w${i}`,
        arbor: `A${i}`,
        teeth: teeth[i],
        size: { module: 1 },
        form,
        level: 0,
        thickness: 2,
      })),
      rules: [
        { id: 'h', kind: 'held', point: 'A0', at: [0, 0] },
        { id: 'b', kind: 'bearing', point: 'A1', centre: 'A0', angle: 0 },
        { id: 'd', kind: 'depth', wheels: ['w0', 'w1'], use: 'held', held: distance },
      ],
    }),
  );
}

function report(teeth: readonly [number, number], off: number, form?: string) {
  const result = rehearsalOf(pair(teeth, off, form));
  if (result.kind === 'none') throw new Error(result.says);
  return result;
}

describe('the rehearsal of a depth', () => {
  it('runs at the right distance, at the speed of the counts within 1 % over a cycle', () => {
    const { runs, turns, speeds, aside, overlap } = report([30, 20], 0);
    expect(runs).toBe(true);
    expect(turns).toBeGreaterThanOrEqual(1);
    expect(speeds[0]?.exact).toBeCloseTo(-1.5, 12);
    expect(Math.abs(speeds[0]?.error ?? 1)).toBeLessThan(0.01);
    // The bearings let each axis stray by 0.01; slop of the physics is below a thousandth.
    for (const { most } of aside) expect(most).toBeLessThan(0.011);
    expect(overlap).toBeLessThan(0.005);
  });

  it.each(['involute', 'cycloidal'])('does not run 0.3 module too close: %s', (form) => {
    const { runs, stoppedBy, stoppedAt, says } = report(form === 'involute' ? [30, 20] : [64, 8], -0.3, form);
    expect(runs).toBe(false);
    expect(['forced', 'stall']).toContain(stoppedBy);
    expect(stoppedAt).toContain('A1');
    expect(says).toMatch(/^It does not run: /);
  });

  it('says that teeth slip where they do not reach each other', () => {
    expect(report([30, 20], 2.1)).toMatchObject({ runs: false, stoppedBy: 'slip' });
  });

  it('is the same each time, tells what it leaves out, and can be broken off', () => {
    expect(report([12, 16], 0.1)).toEqual(report([12, 16], 0.1));
    expect(report([12, 16], 0.1).leftOut.length).toBeGreaterThan(2);
    const run = rehearse(pair([12, 16], 0.1));
    const first = run.next();
    expect(first.done).toBe(false);
    if (!first.done) expect(first.value.done).toBeLessThan(1);
  });

  it('has nothing to rehearse without a depth', () => {
    expect(rehearsalOf(plantMovement(sceneOf({})))).toMatchObject({ kind: 'none' });
  });
});
