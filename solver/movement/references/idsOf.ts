/** Every id of a document with the list that its item stands in. */
import type { Movement } from '../schema.ts';
import { type Collection, collectionNames } from './collections.ts';

/** Map from id to list; where an id stands twice the first one counts. */
export function idsOf(movement: Movement): Map<string, Collection> {
  const known = new Map<string, Collection>();
  for (const collection of collectionNames) {
    for (const { id } of movement[collection]) if (!known.has(id)) known.set(id, collection);
  }
  return known;
}
