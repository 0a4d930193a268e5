/** Lettering keeps out of its own way: no two labels overlap, none covers what is blocked, none is upside down. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { boxOf, type Label, type LabelBox, placeBenchLabels, readable } from '../../renderer/bench/labelPlacement.ts';

const WINDOW: LabelBox = [0, 0, 1000, 700];
const overlaps = (a: LabelBox, b: LabelBox): boolean => a[0] < b[2] && b[0] < a[2] && a[1] < b[3] && b[1] < a[3];

const placeOf = fc.record({
  at: fc.record({ x: fc.integer({ min: -50, max: 1050 }), y: fc.integer({ min: -50, max: 750 }) }),
  turn: fc.double({ min: -1.5, max: 1.5, noNaN: true }),
});
const labels = fc
  .array(
    fc.record({
      width: fc.integer({ min: 10, max: 160 }),
      rank: fc.integer({ min: 0, max: 9 }),
      places: fc.array(placeOf, { minLength: 1, maxLength: 6 }),
    }),
    { maxLength: 60 },
  )
  .map((list) =>
    list.map(({ width, rank, places }, index): Label => {
      return { key: `k${index}`, text: 'x', width, height: 16, rank, must: false, places };
    }),
  );
const boxes = fc.array(
  fc
    .tuple(fc.integer({ min: 0, max: 950 }), fc.integer({ min: 0, max: 650 }))
    .map(([x, y]): LabelBox => [x, y, x + 40, y + 40]),
  { maxLength: 10 },
);

describe('placing labels', () => {
  it('overlaps nothing and stays in the window', () => {
    fc.assert(
      fc.property(labels, boxes, (all, blocked) => {
        const taken: LabelBox[] = [...blocked];
        for (const { label, place } of placeBenchLabels(all, blocked, WINDOW)) {
          const box = boxOf(place, label.width, label.height);
          expect(taken.some((other) => overlaps(box, other))).toBe(false);
          expect(box[0] >= 0 && box[1] >= 0 && box[2] <= 1000 && box[3] <= 700).toBe(true);
          taken.push(box);
        }
      }),
    );
  });

  it('gives the most important label its first place that is free', () => {
    fc.assert(
      fc.property(labels, (all) => {
        const placed = placeBenchLabels(all, [], WINDOW);
        const best = [...all].sort((a, b) => b.rank - a.rank || (a.key < b.key ? -1 : 1))[0];
        if (!best) return;
        const inside = best.places.findIndex((place) => {
          const box = boxOf(place, best.width, best.height);
          return box[0] >= 0 && box[1] >= 0 && box[2] <= 1000 && box[3] <= 700;
        });
        const chosen = placed.find(({ label }) => label.key === best.key);
        expect(chosen?.choice ?? -1).toBe(inside);
      }),
    );
  });

  it('does not jump: the same labels take the same places again', () => {
    fc.assert(
      fc.property(labels, boxes, (all, blocked) => {
        const first = placeBenchLabels(all, blocked, WINDOW);
        const before = new Map(first.map(({ label, choice }) => [label.key, choice]));
        const again = placeBenchLabels(all, blocked, WINDOW, before);
        for (const { label, choice } of first) {
          expect(again.find((each) => each.label.key === label.key)?.choice).toBe(choice);
        }
      }),
    );
  });

  it('keeps a label that must be shown even where nothing is free', () => {
    const label: Label = {
      key: 'a',
      text: '12.500',
      width: 60,
      height: 16,
      rank: 1,
      must: true,
      places: [{ at: { x: 100, y: 100 }, turn: 0 }],
    };
    expect(placeBenchLabels([label], [[0, 0, 1000, 700]], WINDOW)).toHaveLength(1);
    expect(placeBenchLabels([{ ...label, must: false }], [[0, 0, 1000, 700]], WINDOW)).toHaveLength(0);
  });

  it('reads from below or from the right at any angle', () => {
    fc.assert(
      fc.property(fc.double({ min: -20, max: 20, noNaN: true }), (turn) => {
        const shown = readable(turn);
        expect(Math.cos(shown)).toBeGreaterThanOrEqual(-1e-8);
        // Along the same line.
        expect(Math.abs(Math.sin(shown - turn))).toBeLessThan(1e-9);
      }),
    );
  });
});
