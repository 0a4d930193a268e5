import { readFileSync } from 'node:fs';
import { Ajv2020 } from 'ajv/dist/2020.js';
import { describe, expect, test } from 'vitest';
import { FIELD_WORDS } from '../../solver/movement/fieldWords.ts';
import { readMovement, writeMovement } from '../../solver/movement/index.ts';
import { jsonSchemaText, wordsKeyOf } from '../../solver/movement/jsonSchema.ts';
import { movementOfText } from '../support/movements.ts';
import { sampleDocument } from './sampleMovement.ts';

/** A validator of JSON Schema that is not ours, from the registry (ajv). */
const validate = new Ajv2020({ strict: false, formats: { date: true } }).compile(JSON.parse(jsonSchemaText()));

interface Field {
  readonly path: readonly string[];
  readonly description: unknown;
}

/** Every property of a schema, with its path and its words. */
function fieldsOf(node: unknown, path: readonly string[]): readonly Field[] {
  if (Array.isArray(node)) return node.flatMap((inner) => fieldsOf(inner, path));
  if (typeof node !== 'object' || node === null) return [];
  return Object.entries(node).flatMap(([keyword, value]): readonly Field[] => {
    if (keyword !== 'properties') return fieldsOf(value, path);
    return Object.entries(value as Record<string, Record<string, unknown>>).flatMap(([field, inner]) => [
      { path: [...path, field], description: inner['description'] },
      ...fieldsOf(inner, [...path, field]),
    ]);
  });
}

describe('the JSON Schema that ships with the program', () => {
  test('is current: npm run schema writes it', () => {
    const shipped = readFileSync(new URL('../../solver/movement/movement.schema.json', import.meta.url), 'utf8');
    expect(shipped).toBe(jsonSchemaText());
  });

  test('has a name, and words for every field; no words are left over', () => {
    const schema = JSON.parse(jsonSchemaText());
    expect(schema.$id).toBe('urn:depthwright-movement:2');
    const fields = fieldsOf(schema, []);
    expect(fields.length).toBeGreaterThan(400);
    expect(fields.filter(({ description }) => !description).map(({ path }) => path.join('.'))).toEqual([]);
    const used = new Set(fields.map(({ path }) => wordsKeyOf(path)));
    expect(Object.keys(FIELD_WORDS).filter((key) => !used.has(key))).toEqual([]);
  });

  test('accepts what we accept and write', () => {
    expect(validate(sampleDocument()) || validate.errors).toBe(true);
    const movement = movementOfText(JSON.stringify(sampleDocument()));
    expect(validate(JSON.parse(writeMovement(movement))) || validate.errors).toBe(true);
  });

  // biome-ignore lint/suspicious/noExplicitAny: values of every wrong type are written into the sample
  test.each<[string, (d: any) => void]>([
    ['too few teeth', (d) => (d.wheels[0].teeth = 3)],
    ['a missing field', (d) => delete d.wheels[0].thickness],
    ['an unknown rule', (d) => (d.rules[0].kind = 'near')],
    ['a length of nothing', (d) => (d.rules[2].length = 0)],
    ['an id with a space', (d) => (d.arbors[0].id = 'a b')],
    ['another version', (d) => (d.version = 3)],
  ])('refuses %s, as we do', (_, spoil) => {
    const document = sampleDocument();
    spoil(document);
    expect(validate(document)).toBe(false);
    expect(readMovement(JSON.stringify(document)).kind).toBe('problems');
  });
});
