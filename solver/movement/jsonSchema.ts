/** The JSON Schema of the movement file, made from the schema that reads it. */
import { z } from 'zod';
import { FIELD_WORDS } from './fieldWords.ts';
import { FORMAT, movementSchema, VERSION } from './schema.ts';

/** A node of a JSON Schema, as far as it is walked here. */
interface SchemaNode {
  description?: string;
  propertyNames?: object;
  readonly properties?: Readonly<Record<string, SchemaNode>>;
  readonly [keyword: string]: unknown;
}

const isNode = (value: unknown): value is SchemaNode => typeof value === 'object' && value !== null;

/**
 * The line of `FIELD_WORDS` that tells a field, or undefined.
 *
 * @param path names of the fields that lead to it, its own last
 */
export function wordsKeyOf(path: readonly string[]): string | undefined {
  return path.map((_, index) => path.slice(index).join('.')).find((end) => Object.hasOwn(FIELD_WORDS, end));
}

/** Writes the words of every field below a node. */
function describe(node: SchemaNode, path: readonly string[]): void {
  for (const [field, inner] of Object.entries(node.properties ?? {})) {
    const key = wordsKeyOf([...path, field]);
    if (key !== undefined) inner.description = FIELD_WORDS[key] ?? '';
    describe(inner, [...path, field]);
  }
  for (const [keyword, value] of Object.entries(node)) {
    if (keyword === 'properties') continue;
    const inside: readonly unknown[] = Array.isArray(value) ? value : [value];
    for (const inner of inside) if (isNode(inner)) describe(inner, path);
  }
}

/** Names shorter than this have no likely misspellings that are not words of their own. */
const SHORT_NAME = 5;

/** Likely misspellings of a field: all small letters, and each letter left out once. */
function misspellings(field: string): string[] {
  if (field.length < SHORT_NAME) return [];
  const without = [...field].map((_, index) => field.slice(0, index) + field.slice(index + 1));
  return [field.toLowerCase(), ...without, ...without.map((each) => each.toLowerCase())];
}

/** Forbids the likely misspellings in every record, so that editors show them; other unknown fields stay allowed. */
function guard(node: SchemaNode): void {
  const fields = Object.keys(node.properties ?? {});
  if (fields.length > 0) {
    const wrong = new Set(fields.flatMap(misspellings));
    for (const field of fields) wrong.delete(field);
    if (wrong.size > 0) node.propertyNames = { not: { enum: [...wrong].sort() } };
  }
  for (const inner of Object.values(node.properties ?? {})) guard(inner);
  for (const [keyword, value] of Object.entries(node)) {
    if (keyword === 'properties' || keyword === 'propertyNames') continue;
    for (const inner of Array.isArray(value) ? (value as unknown[]) : [value]) if (isNode(inner)) guard(inner);
  }
}

/**
 * Text of `movement.schema.json`: what a file may hold, for editors and other programs, every field with its words.
 * References between parts and contradictions are beyond it; `readMovement` tells those. Dialect: JSON Schema 2020-12.
 */
export function jsonSchemaText(): string {
  const schema = z.toJSONSchema(movementSchema, { io: 'input', target: 'draft-2020-12' });
  guard(schema as SchemaNode);
  describe(schema as SchemaNode, []); // JSON Schema is a tree of such nodes
  const described = {
    $id: `urn:${FORMAT}:${VERSION}`,
    title: 'Movement',
    description:
      'A movement of Depthwright: arbors, wheels, rules and case. Lengths in mm, angles in degrees, x to the right, y up, seen from the marked face. Fields that are not listed here are kept.',
    ...schema,
  };
  return `${JSON.stringify(described, undefined, 2)}\n`;
}
