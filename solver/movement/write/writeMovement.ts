/** The movement as the text of a file. */
import { type Movement, movementSchema } from '../schema.ts';
import { layOut } from './jsonLayout.ts';
import { withoutDefaults } from './withoutDefaults.ts';

/**
 * Text of the file: the same bytes for the same movement, fields equal to their default left out, unknown fields kept.
 * Reading it back gives an equal movement.
 */
export function writeMovement(movement: Movement): string {
  return layOut(withoutDefaults(movement, movementSchema));
}
