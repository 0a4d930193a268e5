/** Readings and made states that contradict themselves. */
import type { Movement } from '../schema.ts';
import type { Report } from './fault.ts';

/** Reports what is wrong within readings and made states. */
export function checkMaking(movement: Movement, report: Report): void {
  movement.readings.forEach((reading, index) => {
    const path = ['readings', index] as const;
    const wanted = reading.kind === 'depth' || reading.kind === 'distance' ? 2 : 1;
    if (reading.of.length !== wanted) {
      report({
        path: [...path, 'of'],
        id: reading.id,
        found: `${reading.of.length} named`,
        expected: wanted === 2 ? 'the two between which it was taken' : 'the one part that was measured',
        remedy: 'correct “of”',
      });
    }
    if (reading.of.length === 2 && reading.of[0] === reading.of[1]) {
      report({
        path: [...path, 'of', 1],
        id: reading.id,
        found: `“${reading.of[1]}” again`,
        expected: 'another part',
        remedy: 'name the other end of the measurement',
      });
    }
    const field = reading.kind === 'place' ? 'at' : 'value';
    if (reading[field] === undefined) {
      report({
        path,
        id: reading.id,
        found: `no “${field}”`,
        expected: `what was measured, in “${field}”`,
        remedy: `add “${field}”`,
      });
    }
  });
  checkMade(movement, report);
}

function checkMade(movement: Movement, report: Report): void {
  const seen = new Map<string, number>();
  movement.made.forEach((made, index) => {
    const path = ['made', index] as const;
    if (made.state === 'drilled' && made.at === undefined) {
      report({
        path,
        id: made.point,
        found: '“drilled” without a place',
        expected: '“at” with the place where it was drilled',
        remedy: 'add “at”, or write “marked”',
      });
    }
    const key = JSON.stringify([made.point, made.plate]);
    const first = seen.get(key);
    if (first === undefined) seen.set(key, index);
    else {
      report({
        path,
        id: made.point,
        found: `a second state of “${made.point}”, which made[${first}] gives already`,
        expected: 'one state for each point and plate',
        remedy: 'remove one of the two',
      });
    }
  });
}
