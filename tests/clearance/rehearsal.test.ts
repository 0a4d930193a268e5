import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { rehearseSteps } from '../../solver/clearance/rehearsal/index.ts';
import { leanOf } from '../../solver/clearance/rehearsal/lean.ts';
import { rehearse } from '../../solver/clearance/rehearsal/rehearse.ts';
import { plantMovement } from '../../solver/planting/index.ts';
import { windowOfDepth } from '../../solver/teeth/index.ts';
import { rehearsalSays } from '../../solver/words/clearance/index.ts';
import { speakerOf } from '../../solver/words/index.ts';
import { sceneOf } from './scenes.ts';

/** Two involute wheels of module 1 at a depth, in holes 0.02 larger than their pivots. */
function pair(teeth: readonly [number, number], off: number, form = 'involute', drivenForm = form) {
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
        form: i === 0 ? form : drivenForm,
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
  const result = rehearse(pair(teeth, off, form));
  if (result.kind === 'none') throw new Error(result.why.kind);
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
    const teeth = form === 'involute' ? ([30, 20] as const) : ([64, 8] as const);
    const found = report(teeth, -0.3, form);
    const { runs, stoppedBy, stoppedAt } = found;
    const says = rehearsalSays(found, speakerOf(pair(teeth, -0.3, form).movement, { minus: '-' }));
    expect(runs).toBe(false);
    expect(['forced', 'stall']).toContain(stoppedBy);
    expect(stoppedAt).toContain('A1');
    expect(says).toMatch(/^It does not run: /);
    expect(says).toMatch(
      /of (30|64) on arbor 1 and .* on arbor 2.*, after \d\.\d+ turns of arbor 1, with it at -?\d+\.\d+°; 0 of 1 driven arbor had moved by a tooth\.$/,
    );
  });

  // Twelve leaves bind first where the wheel's addendum meets the leaf below its pitch circle, by hundredths of a module.
  it.each<[readonly [number, number], string]>([
    [[48, 12], 'cycloidal'],
    [[96, 12], 'cycloidal'],
    [[64, 10], 'cycloidal'],
    [[48, 7], 'cycloidal'],
    [[60, 6], 'cycloidal'],
    [[40, 12], 'involute'],
    [[90, 10], 'involute'],
    [[24, 24], 'involute'],
  ])('tells the right depth from 0.3 module too close: %j, %s', (teeth, form) => {
    expect(rehearse(pair(teeth, 0, form), { turns: 0.2 })).toMatchObject({ runs: true });
    expect(rehearse(pair(teeth, -0.3, form), { turns: 0.2 })).toMatchObject({ runs: false });
  });

  // The contact engine works from the true curves and knows nothing of physics: where it says that a pair binds, beyond
  // what the bearings give way, the train must stop; where it says that it is free, the train must run.
  it('stops where the true teeth bind and runs where they are free', () => {
    const kinds = fc.oneof(
      fc.record({
        form: fc.constant('cycloidal'),
        driven: fc.constant('cycloidal'),
        leaves: fc.integer({ min: 6, max: 16 }),
      }),
      fc.record({
        form: fc.constant('involute'),
        driven: fc.constant('involute'),
        leaves: fc.integer({ min: 10, max: 30 }),
      }),
      fc.record({
        form: fc.constant('cycloidal'),
        driven: fc.constant('lantern'),
        leaves: fc.integer({ min: 8, max: 12 }),
      }),
    );
    fc.assert(
      fc.property(kinds, fc.integer({ min: 40, max: 96 }), ({ form, driven, leaves }, teeth) => {
        const counts = [teeth, leaves] as const;
        const { movement } = pair(counts, 0, form, driven);
        const [a, b] = movement.wheels;
        const window = a && b && windowOfDepth(a, b, movement);
        if (window?.kind !== 'window') throw new Error('no window');
        const deepest = window.deepest - (teeth + leaves) / 2;
        const runs = (off: number) => rehearse(pair(counts, off, form, driven), { turns: 2 / leaves });
        expect(runs(0), 'at its depth').toMatchObject({ runs: true });
        expect(runs(deepest), 'where it is just free').toMatchObject({ runs: true });
        // The two bearings give way by 0.02; so much more is twice the sag of the chords and the skin on both flanks.
        expect(runs(deepest - 0.02 - 0.05), 'where it binds').toMatchObject({ runs: false });
      }),
      { numRuns: 20 },
    );
  });

  it('goes on until the driven arbor has moved by a tooth, and says how many have', () => {
    // A twentieth of a turn of 8 teeth passes 0.4 of a tooth: not enough to say yes.
    const found = rehearse(pair([8, 40], 0), { turns: 0.05 });
    if (found.kind === 'none') throw new Error(found.why.kind);
    expect(found).toMatchObject({ runs: true, moved: 1, driven: 1 });
    expect(found.turns).toBeGreaterThan(1 / 8 - 0.01);
  });

  it('says that teeth slip where they do not reach each other', () => {
    expect(report([30, 20], 2.1)).toMatchObject({ runs: false, stoppedBy: 'slip' });
  });

  it('is the same each time, tells what it leaves out, and can be broken off', () => {
    expect(report([12, 16], 0.1)).toEqual(report([12, 16], 0.1));
    expect(report([12, 16], 0.1).leftOut.length).toBeGreaterThan(2);
    const run = rehearseSteps(pair([12, 16], 0.1));
    const first = run.next();
    expect(first.done).toBe(false);
    if (!first.done) expect(first.value.done).toBeLessThan(1);
  });

  it('runs with a pinion inside a ring, which turns the same way', () => {
    const bearings = [-5, 8].map((at) => ({ at, bore: 1.02, pivot: 1, length: 2 }));
    const wheel = { size: { module: 1 }, form: 'involute', level: 0, thickness: 2 };
    const placed = plantMovement(
      sceneOf({
        arbors: [0, 1].map((i) => ({ id: `A${i}`, at: [i * 20, 0], diameter: 2, bearings })),
        wheels: [
          { ...wheel, id: 'pinion', arbor: 'A0', teeth: 20 },
          { ...wheel, id: 'ring', arbor: 'A1', teeth: 60, internal: true },
        ],
        rules: [
          { id: 'h', kind: 'held', point: 'A0', at: [0, 0] },
          { id: 'b', kind: 'bearing', point: 'A1', centre: 'A0', angle: 0 },
          { id: 'd', kind: 'depth', wheels: ['pinion', 'ring'] },
        ],
      }),
    );
    const result = rehearse(placed, { turns: 1 });
    if (result.kind === 'none') throw new Error(result.why.kind);
    expect(result.runs).toBe(true);
    expect(result.speeds[0]?.exact).toBeCloseTo(1 / 3, 12);
    expect(Math.abs(result.speeds[0]?.error ?? 1)).toBeLessThan(0.01);
  });

  it('tells no speed of what has not yet passed by a tooth', () => {
    const result = rehearse(pair([30, 20], 0), { turns: 0.02 });
    expect(result).toMatchObject({ runs: true, speeds: [{ arbor: 'A1' }] });
    if (result.kind === 'rehearsed') expect(result.speeds[0]).not.toHaveProperty('turned');
  });

  it('has nothing to rehearse without a depth', () => {
    expect(rehearse(plantMovement(sceneOf({})))).toMatchObject({ kind: 'none' });
  });
});

describe('the rehearsal of a train', () => {
  /** A cycloidal stage of 48 into 12 and an involute one of 40 into 20, on held arbors. */
  const train = (off = 0) => {
    const bearings = [-5, 12].map((at) => ({ at, bore: 1.02, pivot: 1, length: 2 }));
    const x = [0, 30, 60 + off];
    const wheel = (id: string, arbor: number, teeth: number, level: number, form: string) => ({
      id,
      name: id,
      arbor: `A${arbor}`,
      teeth,
      size: { module: 1 },
      form,
      level,
      thickness: 2,
    });
    return plantMovement(
      sceneOf({
        arbors: x.map((at, i) => ({ id: `A${i}`, name: `A${i}`, at: [at, 0], diameter: 2, bearings })),
        rules: [
          ...x.map((at, i) => ({ id: `h${i}`, kind: 'held', point: `A${i}`, at: [at, 0] })),
          { id: 'd1', kind: 'depth', wheels: ['w1', 'p1'] },
          { id: 'd2', kind: 'depth', wheels: ['w2', 'p2'], use: 'held', held: 30 + off },
        ],
        wheels: [
          wheel('w1', 0, 48, 0, 'cycloidal'),
          wheel('p1', 1, 12, 0, 'cycloidal'),
          wheel('w2', 1, 40, 5, 'involute'),
          wheel('p2', 2, 20, 5, 'involute'),
        ],
      }),
    );
  };

  it('keeps the exact ratios within 1 % over a cycle of the input', () => {
    const result = rehearse(train());
    if (result.kind === 'none') throw new Error(result.why.kind);
    expect(result.runs).toBe(true);
    expect(result.speeds.map(({ exact }) => exact)).toEqual([-4, 8]);
    for (const { error } of result.speeds) expect(Math.abs(error ?? 1)).toBeLessThan(0.01);
  });

  it('names the depth that is 0.3 module too close', () => {
    const result = rehearse(train(-0.3));
    expect(result).toMatchObject({
      runs: false,
      stoppedWheels: ['w2', 'p2'],
      stoppedAt: expect.arrayContaining(['A2']),
    });
  });
});

describe('the lean of an arbor', () => {
  const bounds = [
    { z: 0, play: 0.349 },
    { z: 40, play: 0.349 },
  ];
  it('is none under a push between its bearings: both pivots lie on one side', () => {
    const lean = leanOf(bounds, [{ z: 10, x: 3, y: 0 }], [10]);
    expect(lean.tilt).toBeCloseTo(0, 12);
    expect(lean.aside).toBeCloseTo(0.349, 12);
  });
  it('is both plays over the distance under a push beyond them: 0.698 over 40 is one degree, by the lever', () => {
    const lean = leanOf(bounds, [{ z: 60, x: 0, y: 1 }], [60]);
    expect((lean.tilt * 180) / Math.PI).toBeCloseTo(1, 3);
    // From 0.349 on one side below to 0.349 on the other above, and half as far again beyond.
    expect(lean.aside).toBeCloseTo(0.349 + 0.349, 12);
  });
  it('follows two pushes that cross, each bearing to its own side', () => {
    // At the bearings' own heights each takes one push whole: x below, y above.
    const lean = leanOf(
      bounds,
      [
        { z: 0, x: 2, y: 0 },
        { z: 40, x: 0, y: 5 },
      ],
      [0, 20, 40],
    );
    expect(lean.tilt).toBeCloseTo(Math.atan((0.349 * Math.SQRT2) / 40), 12);
    expect(lean.aside).toBeCloseTo(0.349, 12);
  });
  it('is told for each arbor of a train: a wheel beyond its bearings leans by their lever', () => {
    // Both bearings below the teeth: bores 0.04 too large, their outer ends 10 apart.
    const bearings = [-12, -4].map((at) => ({ at, bore: 1.04, pivot: 1, length: 2 }));
    const wheel = { size: { module: 1 }, form: 'involute', level: 0, thickness: 2 };
    const placed = plantMovement(
      sceneOf({
        arbors: [0, 1].map((i) => ({ id: `A${i}`, at: [i * 25.05, 0], diameter: 2, bearings })),
        wheels: [
          { ...wheel, id: 'a', arbor: 'A0', teeth: 30 },
          { ...wheel, id: 'b', arbor: 'A1', teeth: 20 },
        ],
        rules: [
          { id: 'h', kind: 'held', point: 'A0', at: [0, 0] },
          { id: 'g', kind: 'bearing', point: 'A1', centre: 'A0', angle: 0 },
          { id: 'd', kind: 'depth', wheels: ['a', 'b'], use: 'held', held: 25.05 },
        ],
      }),
    );
    const result = rehearse(placed, { turns: 0.3 });
    if (result.kind === 'none') throw new Error(result.why.kind);
    for (const { tiltDeg, aside, known } of result.leans) {
      expect(known).toBe(true);
      expect(tiltDeg).toBeCloseTo((Math.atan(0.04 / 10) * 180) / Math.PI, 6);
      // From −0.02 at −12 to +0.02 at −2: at 1, in the middle of the teeth, 0.032.
      expect(aside).toBeCloseTo(0.032, 6);
    }
    expect(rehearsalSays(result, speakerOf(placed.movement))).toMatch(/leans the most, by 0\.23°\.$/);
  });
});
