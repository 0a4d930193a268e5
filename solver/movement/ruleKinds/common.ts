/** What every rule has, whatever its kind. */
import { z } from 'zod';
import { ruleId } from '../ids.ts';
import { name, note, plusMinus } from '../quantities.ts';

/** Fields of every rule; a kind adds its own. */
export const everyRule = {
  id: ruleId,
  name: name.exactOptional(),
  note: note.exactOptional(),
  plusMinus: plusMinus.exactOptional(),
  leaveOut: z.boolean().default(false),
  /** Told to check: it never places. Absent: the order of the rules decides. */
  duty: z.literal('checks').exactOptional(),
};
