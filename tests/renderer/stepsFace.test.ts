/** The steps face: names that keep clear of each other, and ticks for every kind of step, the datum included. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { figureNames, SIZES } from '../../renderer/steps/figureNames.ts';
import { stepFigure } from '../../renderer/steps/stepFigure.ts';
import { tickOf } from '../../renderer/steps/ticks.ts';
import { type Face, markingPlan, plateViewOf } from '../../solver/marking/index.ts';
import { applyEdit } from '../../solver/movement/index.ts';
import type { Movement } from '../../solver/movement/schema.ts';
import { plantMovement } from '../../solver/planting/index.ts';
import { speakerOf } from '../../solver/words/index.ts';
import { stepLines } from '../../solver/words/shop/index.ts';
import { movementOf } from '../marking/placedByHand.ts';

const round = (extra: object = {}): Movement =>
  movementOf({
    plates: [
      { id: 'p', name: 'Drum', levels: { from: 0, to: 3 }, outline: { kind: 'circle', centre: [5, 5], radius: 60 } },
    ],
    marks: [
      { id: 'a', name: 'North', at: [5, 40], hole: 3 },
      { id: 'b', name: 'East', at: [40, 5], hole: 3 },
    ],
    rules: [
      { id: 'h1', kind: 'held', point: 'a', at: [5, 40] },
      { id: 'h2', kind: 'held', point: 'b', at: [40, 5] },
    ],
    ...extra,
  });
const planOf = (movement: Movement, datum?: 'edges' | 'centre') =>
  markingPlan(plantMovement(movement), { plate: 'p', ...(datum && { datum: { kind: datum } }) });

describe('ticking off', () => {
  const ticked = (movement: Movement, at: number): Movement => {
    const step = planOf(movement).steps[at];
    if (!step) throw new Error('no such step');
    const tick = tickOf(movement, step, 'p', '2026-01-02');
    if (tick.kind !== 'ready') throw new Error(tick.why);
    const result = applyEdit(movement, { kind: 'several', edits: tick.edits });
    if (result.kind === 'refused') throw new Error(JSON.stringify(result.why));
    return result.movement;
  };

  test('the centre of a round plate is ticked off, said to be done, and the tick is taken off again', () => {
    const before = round();
    expect(planOf(before).steps[0]).toMatchObject({ kind: 'datum', done: false });
    const after = ticked(before, 0);
    expect(planOf(after).steps[0]).toMatchObject({ kind: 'datum', done: true });
    const { steps, datum } = planOf(after);
    const says = steps.map((step) => stepLines(step, datum, speakerOf(after)).join(' '));
    expect(says[0]).toContain('scribed, pointing right');
    expect(ticked(after, 0)).toEqual(before);
  });

  test('a datum of two points, and any other point, likewise', () => {
    const before = movementOf({ ...round(), plates: [] });
    const placed = plantMovement(before);
    const { steps } = markingPlan(placed);
    expect(steps.map(({ kind }) => kind)).toEqual(['datum', 'datum']);
    for (const step of steps) {
      const tick = tickOf(before, step, undefined, '2026-01-02');
      if (tick.kind !== 'ready') throw new Error(tick.why);
      const after = applyEdit(before, { kind: 'several', edits: tick.edits });
      if (after.kind === 'refused') throw new Error(JSON.stringify(after.why));
      const done = markingPlan(plantMovement(after.movement)).steps.find(({ point }) => point === step.point);
      expect(done?.done).toBe(true);
      if (!done) continue;
      const back = tickOf(after.movement, done, undefined, '2026-01-02');
      if (back.kind !== 'ready') throw new Error(back.why);
      const again = applyEdit(after.movement, { kind: 'several', edits: back.edits });
      expect(again.kind === 'edited' && again.movement).toEqual(before);
    }
  });

  test('a tick noted without a plate is taken off on any; a drilled point keeps its place', () => {
    const loose = round({ made: [{ point: 'a', state: 'marked' }] });
    const step = planOf(loose).steps.find(({ point }) => point === 'a');
    if (!step) throw new Error('no step');
    expect(tickOf(loose, step, 'p', '2026-01-02')).toMatchObject({
      isTicked: true,
      edits: [{ kind: 'clearMade', point: 'a' }],
    });
    const drilled = round({ made: [{ point: 'a', state: 'drilled', at: [5, 40.02] }] });
    const there = planOf(drilled).steps.find(({ point }) => point === 'a');
    if (!there) throw new Error('no step');
    expect(tickOf(drilled, there, 'p', '2026-01-02')).toMatchObject({ kind: 'fixed', isTicked: true });
  });
});

describe('the picture of a step', () => {
  /** Any widths do, as long as the same are used for checking. */
  const widthOf = (text: string, size: number): number => text.length * size * 0.6;
  const view = { width: 700, height: 560 };

  function textsOf(movement: Movement, index: number, face: Face = 'up') {
    const placed = plantMovement(movement);
    const seen = plateViewOf(movement, 'p', face);
    const { steps } = markingPlan(placed, { plate: 'p', face });
    const figure = stepFigure(placed, seen, steps, index, []);
    if (!figure) throw new Error('no such step');
    const scale = 4;
    const projection = { ...view, px: (x: number) => 350 + x * scale, py: (y: number) => 280 - y * scale };
    return figureNames(figure, projection, (mm) => mm.toFixed(3), widthOf);
  }
  const boxOf = ({ kind, text, x, y, anchor }: ReturnType<typeof textsOf>[number]) => {
    const width = widthOf(text, SIZES[kind]);
    const left = anchor === 'start' ? x : anchor === 'end' ? x - width : x - width / 2;
    return [left, y - SIZES[kind] * 0.72, left + width, y] as const;
  };

  test('names and lengths never run into each other, whatever crowds together', () => {
    const place = fc.tuple(fc.integer({ min: -45, max: 45 }), fc.integer({ min: -45, max: 45 }));
    fc.assert(
      fc.property(fc.uniqueArray(place, { minLength: 3, maxLength: 9, selector: String }), (places) => {
        const marks = places.map((at, i) => ({ id: `m${i}`, name: `Point number ${i}`, at, hole: 1 }));
        const rules = marks.map(({ id, at }) => ({ id: `h${id}`, kind: 'held', point: id, at }));
        const texts = textsOf(round({ marks, rules }), places.length);
        const told = texts.filter(({ kind }) => kind !== 'there');
        // What only stands there gives way; what the step needs is always told.
        expect(told.filter(({ kind }) => kind === 'target')).toHaveLength(1);
        for (const there of texts.filter(({ kind }) => kind === 'there')) {
          const a = boxOf(there);
          for (const other of texts) {
            if (other === there) continue;
            const b = boxOf(other);
            const apart = a[2] <= b[0] || b[2] <= a[0] || a[3] <= b[1] || b[3] <= a[1];
            expect(apart, `${there.text} against ${other.text}`).toBe(true);
          }
        }
      }),
      { numRuns: 60 },
    );
  });

  test('a length stands beside its line, not on it; points at one place share a name', () => {
    const marks = [
      { id: 'a', name: 'Middle', at: [0, 0], hole: 1 },
      { id: 'twin', name: 'Twin', at: [0, 0], hole: 1 },
      { id: 'b', name: 'Far', at: [40, 0], hole: 1 },
      { id: 'c', name: 'New', at: [20, 30], hole: 1 },
    ];
    const rules = [
      { id: 'h', kind: 'held', point: 'a', at: [0, 0] },
      { id: 's', kind: 'samePlace', points: ['a', 'twin'] },
      { id: 'hb', kind: 'held', point: 'b', at: [40, 0] },
      { id: 'd1', kind: 'distance', points: ['a', 'c'], length: Math.hypot(20, 30) },
      { id: 'd2', kind: 'distance', points: ['b', 'c'], length: Math.hypot(20, 30) },
    ];
    const movement = round({ marks, rules });
    const { steps } = planOf(movement);
    const texts = textsOf(
      movement,
      steps.findIndex(({ point }) => point === 'c'),
    );
    const lengths = texts.filter(({ kind }) => kind === 'length');
    expect(lengths.map(({ text }) => text)).toEqual(['36.056', '36.056']);
    for (const [index, from] of [
      [0, [350, 280]],
      [1, [510, 280]],
    ] as const) {
      const [left, top, right, low] = boxOf(
        lengths[index] ?? { kind: 'length', text: '', x: 0, y: 0, anchor: 'start' },
      );
      for (let part = 0; part <= 1; part += 0.01) {
        const [x, y] = [from[0] + (430 - from[0]) * part, from[1] + (160 - from[1]) * part];
        expect(x > left && x < right && y > top && y < low).toBe(false);
      }
    }
    expect(texts.map(({ text }) => text).join('; ')).toMatch(/Middle \/ Twin|Twin \/ Middle/);
  });
});
