/** The movement as the text of a file. */
import type { Movement } from './schema.ts';

/** Text of the file, the same bytes for the same movement; unknown fields stand where they were. */
export function writeMovement(movement: Movement): string {
  return `${JSON.stringify(movement, undefined, 2)}\n`;
}
