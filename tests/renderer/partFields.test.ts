/** Fields of parts: each one's edit applies, sets what it says and nothing else. */
import { describe, expect, test } from 'vitest';
import { fieldsOfPoint, fieldsOfWheel } from '../../renderer/slips/partFields.ts';
import type { PartField } from '../../renderer/slips/plainField.ts';
import type { PartId } from '../../solver/movement/ids.ts';
import { applyEdit } from '../../solver/movement/index.ts';
import type { Movement } from '../../solver/movement/schema.ts';
import { movementOfParts } from '../support/movements.ts';

function movement(): Movement {
  const wheel = { arbor: 'a', teeth: 40, size: { module: 1 }, level: 2, thickness: 2 };
  return movementOfParts({
    arbors: [
      { id: 'a', at: [0, 0] },
      { id: 'pipe', at: [0, 0], ridesOn: 'a', diameter: 5, pipeBore: 1.1 },
    ],
    wheels: ['involute', 'cycloidal', 'triangular', 'lantern'].map((form) => ({ ...wheel, id: form, form })),
    posts: [{ id: 'post', at: [20, 0], diameter: 8, levels: { from: 0, to: 20 } }],
    marks: [{ id: 'mark', at: [0, 20] }],
  });
}

const start = movement();
const all: readonly (readonly [string, (from: Movement) => readonly PartField[]])[] = [
  ...['a', 'pipe', 'post', 'mark'].map((id) => [id, (from: Movement) => fieldsOfPoint(from, id as PartId)] as const), // ids of the movement above
  ...start.wheels.map(({ id }) => {
    return [
      id,
      (from: Movement) => fieldsOfWheel(from.wheels.find((wheel) => wheel.id === id) ?? start.wheels[0]!),
    ] as const; // it has wheels
  }),
];
/** A value that each field takes, by its words. */
const valueFor = ({ says }: PartField): number => (/angle/i.test(says) ? 25 : says === 'To height' ? 31 : 1.25);

describe('fields of parts', () => {
  test.each(all)('%s: each edit applies and gives the value that was kept', (_, fieldsOf) => {
    const fields = fieldsOf(start);
    expect(fields.length).toBeGreaterThan(0);
    for (const [index, field] of fields.entries()) {
      const value = valueFor(field);
      const outcome = applyEdit(start, field.edit(value));
      if (outcome.kind === 'refused') throw new Error(`${field.says}: ${JSON.stringify(outcome.why)}`);
      expect(fieldsOf(outcome.movement)[index]?.value, field.says).toBe(value);
      expect(outcome.movement.rules).toEqual(start.rules);
      if (!field.isOptional) continue;
      const cleared = applyEdit(outcome.movement, field.edit(undefined));
      if (cleared.kind === 'refused') throw new Error(`${field.says}: ${JSON.stringify(cleared.why)}`);
      expect(fieldsOf(cleared.movement)[index]?.value, field.says).toBeUndefined();
    }
  });

  test('a height that is stated alone leaves the other end as it was', () => {
    const [, , from] = fieldsOfPoint(start, 'a' as PartId); // an id of the movement above
    if (!from) throw new Error('an arbor has heights');
    const outcome = applyEdit(start, from.edit(4));
    const levels = outcome.kind === 'edited' ? outcome.movement.arbors[0]?.levels : undefined;
    expect(levels).toEqual({ from: 4 });
  });
});
