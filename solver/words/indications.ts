/** What hands, rings and balls are called: the maker's name, else where they stand ("hand on Hour pipe"). */

import { namer } from '../marking/index.ts';
import type { Movement } from '../movement/schema.ts';

const known = new WeakMap<Movement, ReadonlyMap<string, string>>();

/** Words for every indication by id. Two with the same words are counted: "hand on Third, 2". */
export function indicationNamesOf(movement: Movement): ReadonlyMap<string, string> {
  const last = known.get(movement);
  if (last) return last;
  const name = namer(movement);
  const seen = new Map<string, number>();
  const names = new Map<string, string>();
  for (const { id, name: own, arbor } of movement.indications) {
    const isThere = movement.arbors.some((each) => each.id === arbor);
    const words = own?.trim() || (isThere ? `hand on ${name(arbor)}` : 'hand without an arbor');
    const times = (seen.get(words.toLowerCase()) ?? 0) + 1;
    seen.set(words.toLowerCase(), times);
    names.set(id, times > 1 ? `${words}, ${times}` : words);
  }
  known.set(movement, names);
  return names;
}
