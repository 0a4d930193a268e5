/** What changed between two revisions, with odd names and in both units: no id, no field's name, no foreign unit. */
import { expect, it } from 'vitest';
import { speakerOf } from '../../solver/words/index.ts';
import { revisionSays } from '../../solver/words/shop/index.ts';
import { expectSpoken, oddlyNamed } from './spoken.ts';

const CHANGED = {
  title: 'Odd names, again',
  cures: { leastWall: 1.2 },
  posts: [{ id: 'zz4', at: [41, 40], diameter: 6, hole: 3 }],
  marks: [],
  made: [{ point: 'zz3', plate: 'zz0', state: 'drilled', at: [17.02, 23], plusMinus: 0.02, date: '2026-05-02' }],
  readings: [{ id: 'zz21', kind: 'diameter', of: ['zz8'], value: 50.2, note: 'again' }],
  rules: [
    { id: 'zz10', kind: 'held', point: 'zz1', at: [0, 0] },
    { id: 'zz11', kind: 'held', point: 'zz2', at: [0, 45.5], plusMinus: 0.02 },
    { id: 'zz12', kind: 'depth', wheels: ['zz6', 'zz7'], use: 'measured', measured: { value: 28.86, reading: 'zz21' } },
    { id: 'zz14', kind: 'distance', points: ['zz1', 'zz4'], length: 56 },
  ],
};

it.each(['mm', 'inch'] as const)('there and back in %s', (unit) => {
  const [before, after] = [oddlyNamed(unit), oddlyNamed(unit, CHANGED)];
  const there = revisionSays(before, speakerOf(after));
  const back = revisionSays(after, speakerOf(before));
  expect(there.length).toBeGreaterThan(10);
  expect(back).toHaveLength(there.length);
  for (const says of [...there, ...back]) expectSpoken(says, speakerOf(after));
  expect(revisionSays(before, speakerOf(before))).toEqual([]);
});

it('lengths are told in the unit of the document, names as the maker gave them', () => {
  const says = revisionSays(oddlyNamed('mm'), speakerOf(oddlyNamed('mm', CHANGED)));
  expect(says).toContain('Limits of cures, least wall: 0.800 mm → 1.200 mm.');
  expect(says).toContain('Post 1, diameter: 5.000 mm → 6.000 mm.');
  expect(says).toContain('Removed: mark 1.');
  expect(says).toContain('Third, upper in Front “A”: drilled at 17.020 mm, 23.000 mm ±0.02 mm on 2026-05-02.');
});
