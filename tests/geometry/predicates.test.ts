/** The sign of our orientation predicate: y up, left is positive, exact at the smallest steps. */
import { expect, it } from 'vitest';
import { sideOf } from '../../solver/geometry/predicates.ts';

it('calls the left of the line from a to b left when y points up', () => {
  expect(sideOf({ x: 0, y: 0 }, { x: 1, y: 0 }, { x: 0, y: 1 })).toBe(1);
  expect(sideOf({ x: 0, y: 0 }, { x: 1, y: 0 }, { x: 0, y: -1 })).toBe(-1);
  expect(sideOf({ x: 0, y: 0 }, { x: 1, y: 0 }, { x: 5, y: 0 })).toBe(0);
});

it('sees one unit in the last place to either side, where plain arithmetic does not', () => {
  // Near (0.5, 0.5) on the line through (12, 12) and (24, 24): the classic example of the library's paper.
  const ulp = 2 ** -53;
  for (let i = 1; i <= 8; i++) {
    expect(sideOf({ x: 12, y: 12 }, { x: 24, y: 24 }, { x: 0.5, y: 0.5 + 2 * i * ulp })).toBe(1);
    expect(sideOf({ x: 12, y: 12 }, { x: 24, y: 24 }, { x: 0.5, y: 0.5 - i * ulp })).toBe(-1);
    expect(sideOf({ x: 12, y: 12 }, { x: 24, y: 24 }, { x: 0.5 + 2 * i * ulp, y: 0.5 + 2 * i * ulp })).toBe(0);
  }
});
