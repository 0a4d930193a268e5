/** The templates are sound, planted, without findings and written in the program's own way. */
import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { checkMovement } from '../../solver/clearance/index.ts';
import { readMovement, writeMovement } from '../../solver/movement/index.ts';
import { plantMovement } from '../../solver/planting/index.ts';

test.each(['two-plates-and-four-pillars', 'round-plates-and-three-pillars'])('the template %s', (name) => {
  const text = readFileSync(new URL(`../../demo-data/templates/${name}.json`, import.meta.url), 'utf8');
  const reading = readMovement(text);
  if (reading.kind === 'problems') throw new Error(reading.problems.map(({ says }) => says).join('\n'));
  expect(writeMovement(reading.movement)).toBe(text);
  const placed = plantMovement(reading.movement);
  expect(placed.freeMotions).toBe(0);
  expect([...placed.places.values()].filter(({ state }) => state !== 'planted')).toEqual([]);
  expect(checkMovement(placed)).toEqual([]);
});
