/** The JSON Schema of the movement file, made from the schema that reads it. */
import { z } from 'zod';
import { FIELD_WORDS } from './fieldWords.ts';
import { FORMAT, movementSchema, VERSION } from './schema.ts';

/** A node of a JSON Schema, as far as it is walked here. */
interface SchemaNode {
  description?: string;
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

/**
 * Text of `movement.schema.json`: what a file may hold, for editors and other programs, every field with its words.
 * References between parts and contradictions are beyond it; `readMovement` tells those. Dialect: JSON Schema 2020-12.
 */
export function jsonSchemaText(): string {
  const schema = z.toJSONSchema(movementSchema, { io: 'input', target: 'draft-2020-12' });
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
