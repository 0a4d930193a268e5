/** The templates are sound, planted, without findings and written in the program's own way. */
import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { checkMovement } from '../../solver/clearance/index.ts';
import { writeMovement } from '../../solver/movement/index.ts';
import { plantMovement } from '../../solver/planting/index.ts';
import { movementOfText } from '../support/movements.ts';

test.each(['two-plates-and-four-pillars', 'round-plates-and-three-pillars'])('the template %s', (name) => {
  const text = readFileSync(new URL(`../../demo-data/templates/${name}.json`, import.meta.url), 'utf8');
  const movement = movementOfText(text);
  expect(writeMovement(movement)).toBe(text);
  const placed = plantMovement(movement);
  expect(placed.freeMotions).toBe(0);
  expect([...placed.places.values()].filter(({ state }) => state !== 'planted')).toEqual([]);
  expect(checkMovement(placed)).toEqual([]);
});
