/** Readings, made states and own periods that contradict themselves. */
import type { Movement } from '../schema.ts';
import type { Report } from './fault.ts';

/** Reports what is wrong within readings, made states and own periods. */
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
    if (reading.bearing !== undefined && reading.kind !== 'diameter' && reading.kind !== 'bore') {
      report({
        path: [...path, 'bearing'],
        id: reading.id,
        found: `a bearing for a reading of kind “${reading.kind}”`,
        expected: '“bearing” only for the diameter of a pivot or the bore that it runs in',
        remedy: 'remove “bearing”, or correct “kind”',
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
  checkConstants(movement, report);
}

/** Own periods: one of each name, and none of nothing. */
function checkConstants(movement: Movement, report: Report): void {
  const seen = new Map<string, number>();
  movement.constants?.forEach(({ id, value }, index) => {
    const path = ['constants', index] as const;
    const first = seen.get(id);
    if (first === undefined) seen.set(id, index);
    else {
      report({
        path: [...path, 'id'],
        id,
        found: `“${id}”, which constants[${first}] is called already`,
        expected: 'a name of its own for each period',
        remedy: 'rename or remove one of the two',
      });
    }
    // The schema lets only decimals and ratios of them through; a figure other than 0 must stand before any exponent.
    if (value.split('/').every((part) => /[1-9]/.test(part.split(/[eE]/)[0] ?? ''))) return;
    report({
      path: [...path, 'value'],
      id,
      found: `“${value}”`,
      expected: 'a period above zero, as a decimal or a ratio',
      remedy: 'correct “value”',
    });
  });
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
