/** A movement with nothing in it. */
import { FORMAT, type Movement, movementSchema, VERSION } from './schema.ts';

/** A new document: every field at its default. */
export function emptyMovement(): Movement {
  // The schema's output differs from Movement only by index signatures for unknown fields.
  return movementSchema.parse({ format: FORMAT, version: VERSION }) as Movement;
}
