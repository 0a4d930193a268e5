/** The movement's own document. */
import type { FileFormat } from './format.ts';

/** The movement's own document; written by the room of the movement. */
export const movementFormat: FileFormat<'movement'> = {
  name: 'movement',
  ending: '.json',
  called: 'movement',
  seen: 'text',
  holds: 'nothing to check',
};
