/** A movement whose parts have telling ids and odd names, and what no sentence of it may hold. */
import { expect } from 'vitest';
import type { Movement } from '../../solver/movement/schema.ts';
import { type Speaker, speakerOf } from '../../solver/words/index.ts';
import { movementOfParts } from '../support/movements.ts';

const wheel = (id: string, arbor: string, teeth: number, level: number) => ({
  id,
  arbor,
  teeth,
  size: { module: 0.8 },
  form: 'cycloidal',
  level,
  thickness: 2,
});

/** Two depths and a plate; every id begins with `zz`, and a name stands where a maker gave one. */
export function oddlyNamed(unit: 'mm' | 'inch', more: object = {}): Movement {
  return movementOfParts({
    title: 'Odd names',
    display: { unit, decimals: 3 },
    plates: [
      {
        id: 'zz0',
        name: 'Front “A”',
        outline: { kind: 'circle', centre: [0, 0], radius: 90 },
        levels: { from: 0, to: 2 },
      },
    ],
    arbors: [
      { id: 'zz1', at: [0, 0], bearings: [{ plate: 'zz0', bore: 3, pivot: 2.95, length: 2 }] },
      { id: 'zz2', name: 'Ärger & Co', at: [0, 45] },
      { id: 'zz3', name: 'third, upper', at: [17, 23], bearings: [{ at: 0, bore: 3, pivot: 2.95, length: 2 }] },
    ],
    posts: [{ id: 'zz4', at: [40, 40], diameter: 5, hole: 3 }],
    marks: [{ id: 'zz5', at: [50, 0] }],
    wheels: [
      wheel('zz6', 'zz1', 64, 3),
      wheel('zz7', 'zz3', 8, 3),
      { ...wheel('zz8', 'zz3', 60, 6), name: 'Große' },
      wheel('zz9', 'zz2', 8, 6),
    ],
    rules: [
      { id: 'zz10', kind: 'held', point: 'zz1', at: [0, 0] },
      { id: 'zz11', kind: 'held', point: 'zz2', at: [0, 45] },
      { id: 'zz12', kind: 'depth', wheels: ['zz6', 'zz7'] },
      { id: 'zz13', kind: 'depth', wheels: ['zz8', 'zz9'] },
      { id: 'zz14', kind: 'held', point: 'zz4', at: [40, 40] },
      { id: 'zz15', kind: 'held', point: 'zz5', at: [50, 0] },
    ],
    readings: [
      { id: 'zz20', kind: 'depth', of: ['zz6', 'zz7'], value: 28.86, date: '2026-05-01' },
      { id: 'zz21', kind: 'diameter', of: ['zz8'], value: 50 },
    ],
    ...more,
  });
}

/** Speakers of the same movement in millimetres and in inches. */
export function bothUnits(more: object = {}): readonly Speaker[] {
  return (['mm', 'inch'] as const).map((unit) => speakerOf(oddlyNamed(unit, more)));
}

/** Lengths always have decimals here, so that "arbor 1 in Front" is no length. */
const FOREIGN = { mm: /\.\d+ (?:in|thou)\b/, inch: /\d ?(?:mm|µm)\b/ } as const;

/** A sentence for a maker: no unit but the document's, no id, no field's name, nothing that is no word or figure. */
export function expectSpoken(says: string, { display }: Speaker): void {
  expect(says).not.toMatch(FOREIGN[display.unit]);
  expect(says).not.toMatch(/zz\d/);
  expect(says).not.toMatch(/[a-zß-ÿ][A-Z]/);
  expect(says).not.toMatch(/undefined|NaN|Infinity|null|\[object/);
  expect(says).not.toMatch(/[-−]0(?:\.0+)?(?![.\d])/);
  expect(says.trim()).not.toBe('');
}
