/** Who speaks on a terminal: a hyphen stands for minus, because other programs read what is printed. */
import type { Movement } from '../../solver/movement/schema.ts';
import { type Speaker, speakerOf } from '../../solver/words/index.ts';

/** The speaker of a document for plain text. */
export function plainSpeaker(movement: Movement): Speaker {
  return speakerOf(movement, { minus: '-' });
}
