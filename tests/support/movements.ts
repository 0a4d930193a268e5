/**
 * Movements for tests, read as the program reads them: every test that needs one gets it here.
 *
 * A movement that cannot be read fails the test with all its problems.
 */
import { readFileSync } from 'node:fs';
import { resolve } from 'node:path';
import { readMovement } from '../../solver/movement/index.ts';
import type { Movement } from '../../solver/movement/schema.ts';

const TOP = resolve(import.meta.dirname, '../..');

/** The movement of a file's text. */
export function movementOfText(text: string): Movement {
  const reading = readMovement(text);
  if (reading.kind === 'problems') throw new Error(reading.problems.map(({ says }) => says).join('\n'));
  return reading.movement;
}

/** The movement in a file, by its path from the top of the checkout: "demo-data/tide-dial.json". */
export function movementOfFile(path: string): Movement {
  return movementOfText(readFileSync(resolve(TOP, path), 'utf8'));
}

/** A movement of the parts given, as a file would list them; its head is filled in. */
export function movementOfParts(parts: object): Movement {
  return movementOfText(JSON.stringify({ format: 'depthwright-movement', version: 2, ...parts }));
}
