/** Fields that are nearly spelled like known ones are told; other unknown fields are kept in silence. */
import { Ajv2020 } from 'ajv/dist/2020.js';
import { describe, expect, it } from 'vitest';
import { readMovement } from '../../solver/movement/index.ts';
import { jsonSchemaText } from '../../solver/movement/jsonSchema.ts';
import { VERSION } from '../../solver/movement/schema.ts';

const fileOf = (parts: object): object => ({ format: 'depthwright-movement', version: VERSION, ...parts });
function doubtsOf(parts: object): readonly string[] {
  const reading = readMovement(JSON.stringify(fileOf(parts)));
  if (reading.kind === 'problems') throw new Error(reading.problems.map(({ says }) => says).join(' '));
  return (reading.doubts ?? []).map(({ says }) => says);
}

const arbor = (more: object): object => ({ arbors: [{ id: 'a', at: [0, 0], ...more }] });
const bearing = (more: object): object => arbor({ bearings: [{ bore: 2, pivot: 2, length: 3, ...more }] });

describe('mistyped fields', () => {
  it.each([
    ['endshake', 'endShake', arbor({ endshake: 0.2 })],
    ['endShke', 'endShake', arbor({ endShke: 0.2 })],
    ['colars', 'collars', arbor({ colars: [] })],
    ['ridesON', 'ridesOn', arbor({ ridesON: 'b' })],
    ['oter', 'outer', bearing({ oter: 4 })],
    ['limts', 'limits', { limts: { radialGap: 2 } }],
    ['radialgap', 'radialGap', { limits: { radialgap: 2 } }],
    [
      'leveout',
      'leaveOut',
      { rules: [{ id: 'r', kind: 'held', point: 'a', at: [0, 0], leveout: true }], ...arbor({}) },
    ],
  ])('“%s” is told as “%s”', (wrong, meant, parts) => {
    expect(doubtsOf(parts)).toEqual([expect.stringContaining(`rename it to “${meant}”`)]);
    expect(doubtsOf(parts)[0]).toContain(`“${wrong}”`);
  });

  it.each([
    ['a field of another program', arbor({ supplier: 'the shelf' })],
    ['a field beside the one that it resembles', arbor({ endShake: 0.2, endShakes: [1] })],
    ['nothing unknown at all', arbor({ endShake: 0.2 })],
  ])('nothing is told of %s', (_, parts) => {
    expect(doubtsOf(parts)).toEqual([]);
  });

  it('the place and the part are named', () => {
    expect(doubtsOf(arbor({ endshake: 0.2 }))[0]).toMatch(/^arbors\[0\]\.endshake \(“a”\): found/);
  });

  it('the schema that ships refuses them, and takes other unknown fields', () => {
    const validate = new Ajv2020({ strict: false, validateFormats: false }).compile(
      JSON.parse(jsonSchemaText()) as object,
    );
    expect(validate(fileOf(arbor({ endshake: 0.2 })))).toBe(false);
    expect(validate(fileOf({ limits: { radalGap: 2 } }))).toBe(false);
    expect(validate(fileOf(arbor({ supplier: 'the shelf' })))).toBe(true);
  });
});
