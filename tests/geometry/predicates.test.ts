/** The sign of our orientation predicate: y up, left is positive, exact at the smallest steps. */
import { expect, it } from 'vitest';
import { sideOf } from '../../solver/geometry/predicates.ts';

it('calls the left of the line from a to b left when y points up', () => {
  expect(sideOf([0, 0], [1, 0], [0, 1])).toBe(1);
  expect(sideOf([0, 0], [1, 0], [0, -1])).toBe(-1);
  expect(sideOf([0, 0], [1, 0], [5, 0])).toBe(0);
});

it('sees one unit in the last place to either side, where plain arithmetic does not', () => {
  // Near (0.5, 0.5) on the line through (12, 12) and (24, 24): the classic example of the library's paper.
  const ulp = 2 ** -53;
  for (let i = 1; i <= 8; i++) {
    expect(sideOf([12, 12], [24, 24], [0.5, 0.5 + 2 * i * ulp])).toBe(1);
    expect(sideOf([12, 12], [24, 24], [0.5, 0.5 - i * ulp])).toBe(-1);
    expect(sideOf([12, 12], [24, 24], [0.5 + 2 * i * ulp, 0.5 + 2 * i * ulp])).toBe(0);
  }
});
