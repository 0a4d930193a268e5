import { describe, expect, it } from 'vitest';
import { type Face, markingSteps } from '../../solver/marking/index.ts';
import type { MarkingOptions } from '../../solver/marking/steps/markingSteps.ts';
import type { PlacedMovement } from '../../solver/planting/placed.ts';
import { everyConstruction, placedByHand } from './placedByHand.ts';
import { type BarePlate, followSteps } from './simulatedMaker.ts';
import { stepsSay, stepsText } from './stepsTold.ts';

const FINE = { unit: 'mm', decimals: 10 } as const;
const EDGES = { left: 0, lower: 0, right: 100, upper: 90 };
const EDGES_BELOW = { left: -100, lower: 0, right: 0, upper: 90 };

/** Largest miss of the simulated maker, mm, and how many points he struck. */
function missOf(placed: PlacedMovement, options: MarkingOptions, plate: BarePlate) {
  const text = stepsText(placed, { display: FINE, ...options });
  const struck = followSteps(text, plate);
  let worst = 0;
  for (const step of markingSteps(placed, options)) {
    const at = struck.get(step.label);
    if (step.kind === 'unsettled' || step.point === 'plate centre') continue;
    if (!at) throw new Error(`${step.label} was not struck`);
    worst = Math.max(worst, Math.hypot(at[0] - step.place[0], at[1] - step.place[1]));
  }
  return { worst, count: struck.size };
}

describe('a maker who only reads the sheet lands every point', () => {
  const placed = everyConstruction();
  const cases: readonly (readonly [string, Face, MarkingOptions, BarePlate])[] = [
    ['from the edges', 'up', {}, { edges: EDGES }],
    ['from the edges of the mirrored face', 'down', {}, { edges: EDGES_BELOW }],
    [
      'from two points',
      'up',
      { datum: { kind: 'pair', first: 'centre', second: 'escape' } },
      { edges: {}, first: [40, 30], base: Math.PI / 2 },
    ],
    [
      'from two points of the mirrored face',
      'down',
      { datum: { kind: 'pair', first: 'postA', second: 'centre' } },
      { edges: {}, first: [-10, 80], base: Math.atan2(-50, -30) },
    ],
  ];
  for (const [name, face, options, plate] of cases) {
    it(name, () => {
      const { worst, count } = missOf(placed, { plate: 'base', face, ...options }, plate);
      expect(count).toBe(14);
      expect(worst).toBeLessThan(1e-6);
    });
  }

  it('from the centre of a round plate', () => {
    const round = everyConstruction({ kind: 'circle', centre: [45, 44], radius: 70 });
    const { worst, count } = missOf(round, { plate: 'base' }, { edges: {}, centre: [45, 44] });
    expect(count).toBe(14);
    expect(worst).toBeLessThan(1e-6);
  });

  it('would miss with the wrong crossing', () => {
    const text = stepsText(placed, { plate: 'base', display: FINE }).replaceAll(
      'the right-hand of',
      'the left-hand of',
    );
    expect(() => followSteps(text, { edges: EDGES })).toThrow(/false/);
  });
});

describe('what a step says', () => {
  const placed = everyConstruction();
  const steps = markingSteps(placed, { plate: 'base', face: 'up' });
  const step = (id: string) => steps.find((each) => each.point === id);
  const told = stepsSay(placed, { plate: 'base', face: 'up' });
  const says = (id: string) => told[steps.findIndex((each) => each.point === id)];

  it('uses the constructions of the rules', () => {
    const kinds = Object.fromEntries(steps.map((each) => [each.point, each.kind]));
    expect(kinds).toMatchObject({
      centre: 'offset',
      third: 'arcs',
      pipe: 'same',
      seconds: 'arcAndLine',
      opposite: 'opposite',
      online: 'arcAndLine',
      postB: 'arcAndLine',
      postC: 'spacing',
      blockA: 'derivedArcs',
      loose: 'unsettled',
    });
  });

  it('gives the two depths of the worked example as divider settings', () => {
    // Two depths by hand (SOURCES.md): settings 28.8 and 27.2, lines of centres at 106.910 degrees, 0.01 moves 0.01 / sin.
    expect(step('third')?.loci).toMatchObject([
      { kind: 'arc', from: 'centre', rule: 'd1' },
      { kind: 'arc', from: 'escape', rule: 'd2' },
    ]);
    const radii = step('third')?.loci.map((locus) => (locus.kind === 'arc' ? locus.radius : 0)) ?? [];
    expect(radii[0]).toBeCloseTo(28.8, 9);
    expect(radii[1]).toBeCloseTo(27.2, 9);
    expect(step('third')?.crossingAngleDeg).toBeCloseTo(180 - 106.91, 3);
    expect(step('third')?.movedByHundredth).toBeCloseTo(0.01 / Math.sin((106.91 * Math.PI) / 180), 6);
    expect(says('third')).toContain('the right-hand of the two crossings, right of the line from Centre to Escape');
  });

  it('checks by a distance that was not used', () => {
    for (const each of steps) {
      const used = each.loci.flatMap((locus) => (locus.kind === 'line' ? [locus.through, locus.to] : [locus.from]));
      if (each.check) expect(used).not.toContain(each.check.from);
    }
    expect(steps.filter((each) => each.check).length).toBeGreaterThan(9);
  });

  it('warns of a flat crossing and names a better way', () => {
    const data = {
      plates: [{ id: 'p', levels: { from: 0, to: 2 }, outline: { kind: 'circle', centre: [0, 0], radius: 60 } }],
      marks: [
        { id: 'a', at: [0, 0], hole: 1 },
        { id: 'b', at: [8, 0], hole: 1 },
        { id: 'c', at: [30, 30], hole: 1 },
        { id: 'p1', at: [-3.75, 29.76], hole: 1 },
      ],
      rules: [
        { id: 'da', kind: 'distance', points: ['a', 'p1'], length: 30 },
        { id: 'db', kind: 'distance', points: ['b', 'p1'], length: 32 },
      ],
    };
    // Narrow angle of check values G.cov.4: A (0,0), B (8,0), 30 and 32 cross at 14.3615 degrees.
    const flat = placedByHand(data, {
      a: { at: [0, 0], kind: 'given' },
      b: { at: [8, 0], kind: 'given' },
      c: { at: [30, 30], kind: 'given' },
      p1: { at: [-3.75, 29.7647022495], by: ['da', 'db'] },
    });
    const [, , , , last] = markingSteps(flat, { plate: 'p' });
    expect(last?.crossingAngleDeg).toBeCloseTo(14.3615, 3);
    expect(last?.warns).toMatchObject({ kind: 'flatBetterArcs' });
    expect(stepsSay(flat, { plate: 'p' })[4]).toMatch(/flat crossing.*Better: arc .* from mark 3/);
  });

  it('gives no mark to a point that is not settled', () => {
    expect(step('loose')?.loci).toEqual([]);
    expect(says('loose')).toContain('can still move');
  });
});
