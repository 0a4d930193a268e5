/** The JSON Schema of the movement file, made from the schema that reads it. */
import { z } from 'zod';
import { movementSchema } from './schema.ts';

/**
 * Text of `movement.schema.json`: what a file may hold, for editors and other programs. References between parts and
 * contradictions are beyond it; `readMovement` tells those. Dialect: JSON Schema 2020-12.
 */
export function jsonSchemaText(): string {
  const schema = z.toJSONSchema(movementSchema, { io: 'input', target: 'draft-2020-12' });
  const described = {
    title: 'Movement',
    description:
      'A movement of Depthwright: arbors, wheels, rules and case. Lengths in mm, angles in degrees, x to the right, y up, seen from the marked face. Fields that are not listed here are kept.',
    ...schema,
  };
  return `${JSON.stringify(described, undefined, 2)}\n`;
}
