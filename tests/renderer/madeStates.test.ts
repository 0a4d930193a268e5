/** States that can be compared, moves enlarged, rows of readings and depths: on our own going train; sums by hand. */
import { describe, expect, it } from 'vitest';
import { depthRows, editOfDepthRow, hasUnused } from '../../renderer/readings/depthRows.ts';
import { enlargedTip, fittingTimes } from '../../renderer/readings/enlarged.ts';
import { readingRows } from '../../renderer/readings/readingRows.ts';
import { DRAWN, fileChosen, fileKey, NOW, stateChoices, stateChosen } from '../../renderer/readings/stateChoices.ts';
import { MEASURED, sizesFor, type WhatMeasured } from '../../renderer/readings/whatMeasured.ts';
import { shiftOf } from '../../solver/made/holes/cure.ts';
import { partSizes } from '../../solver/made/index.ts';
import type { PointId } from '../../solver/movement/ids.ts';
import { applyEdit, type Edit } from '../../solver/movement/index.ts';
import type { Movement } from '../../solver/movement/schema.ts';
import { plantMovement } from '../../solver/planting/index.ts';
import { speakerOf } from '../../solver/words/index.ts';
import { movementOfFile } from '../support/movements.ts';

function train(): Movement {
  return movementOfFile('demo-data/going-train.json');
}

function edited(movement: Movement, ...edits: readonly Edit[]): Movement {
  const outcome = applyEdit(movement, { kind: 'several', edits });
  if (outcome.kind === 'refused') throw new Error(JSON.stringify(outcome.why));
  return outcome.movement;
}

describe('states', () => {
  it('are the drawing, each day, now, and files; a key that is gone names none', () => {
    const movement = train();
    const files = [{ name: 'old.json', movement: { ...movement, revision: '0' } }];
    const keys = stateChoices(movement, files).map(({ key }) => key);
    expect(keys).toEqual([fileKey(0), DRAWN, 'day 2026-02-14', 'day 2026-02-15', NOW]);
    expect(stateChosen(movement, files, NOW)).toBe(movement);
    expect(stateChosen(movement, files, fileKey(0))?.revision).toBe('0');
    expect(stateChosen(movement, files, DRAWN)?.readings).toEqual([]);
    expect(stateChosen(movement, files, 'day 2026-02-14')?.readings).toHaveLength(1);
    expect(stateChosen(movement, files, fileKey(3))).toBeUndefined();
    expect(fileChosen(files, NOW)).toBeUndefined();
  });
});

describe('moves enlarged', () => {
  it.each([
    // 0.03 mm at 3 px/mm are 0.09 px: 500 times 45 px, 1000 times 90 px.
    [0.03, 3, 89, 500],
    [0.03, 3, 90, 1000],
    [0.25, 3.15, 90, 100],
    [100, 3, 90, 1],
    [0, 3, 90, 1],
  ])('%d mm at %d px a mm within %d px: %d times', (amount, scale, wanted, times) => {
    expect(fittingTimes(amount, scale, wanted)).toBe(times);
  });

  it('the tip lies along the move, so many times as far', () => {
    const move = {
      id: 'a' as PointId,
      from: { x: 1, y: 2 },
      to: { x: 1.03, y: 1.96 },
      amount: 0.05,
      shift: shiftOf(0.03, -0.04),
    }; // our own id
    const tip = enlargedTip(move, 100);
    expect(tip.x).toBeCloseTo(4, 9);
    expect(tip.y).toBeCloseTo(-2, 9);
  });
});

describe('rows', () => {
  const third = { kind: 'depth', of: ['third-wheel', 'escape-pinion'], plusMinus: 0.02 } as const;
  const movement = edited(
    train(),
    { kind: 'add', to: 'readings', item: { id: 'n1', ...third, of: [...third.of], value: 25.57 } },
    { kind: 'add', to: 'readings', item: { id: 'n2', ...third, of: [...third.of], value: 25.55 } },
    { kind: 'add', to: 'readings', item: { id: 'n3', ...third, of: [...third.of], value: 26.4 } },
  );
  const settled = plantMovement(movement);
  const speaker = speakerOf(movement);
  const rows = depthRows(settled, speaker);

  it('a depth has its combined reading, used by one edit', () => {
    const row = rows.find(({ rule }) => rule.id === 'third-escape');
    // The one at 26.4 does not belong; (25.53 + 25.57 + 25.55) / 3.
    expect(row?.measured?.measured?.length).toBeCloseTo(25.55, 9);
    expect(row && hasUnused(row)).toBe(true);
    const edit = row && editOfDepthRow(row);
    const after = edit ? depthRows(plantMovement(edited(movement, edit)), speaker) : [];
    expect(after.filter(hasUnused).map(({ rule }) => rule.id)).not.toContain('third-escape');
  });

  it('readings are told the latest first, with how far the odd one is off', () => {
    const told = readingRows(settled, rows, speaker);
    expect(told[0]?.reading.id).toBe('n3');
    expect(told[0]?.off).toBeCloseTo(26.4 - 25.55, 9);
    expect(told[0]?.of).toBe('Third arbor to Escape arbor');
    expect(told.slice(1).every(({ off }) => off === undefined)).toBe(true);
  });

  it('every word for a size offers sizes of a going train, and together they offer all', () => {
    const sizes = partSizes(movement);
    const words = Object.keys(MEASURED) as WhatMeasured[]; // the record's own keys
    const offered = words.flatMap((what) => sizesFor(sizes, what));
    expect(new Set(offered).size).toBe(offered.length);
    // Holes that the drawing does not have cannot be measured.
    const missing = sizes.filter((size) => !offered.includes(size));
    expect(missing.every(({ field, drawn }) => field === 'hole' && drawn === 0)).toBe(true);
    for (const what of ['tips', 'pivot', 'hole', 'thickness', 'runOut', 'endShake'] as const) {
      expect(sizesFor(sizes, what).length).toBeGreaterThan(0);
    }
  });
});
