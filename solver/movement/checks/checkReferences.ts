/** Ids are unique over the whole document, and every reference names something of the right kind. */
import { nearIn } from '../read/nearSpelling.ts';
import { COLLECTIONS, type Collection, collectionNames } from '../references/collections.ts';
import { eachReference } from '../references/eachReference.ts';
import { idsOf } from '../references/idsOf.ts';
import type { Movement } from '../schema.ts';
import type { Report } from './fault.ts';

/** Reports repeated ids, and references that lead nowhere or to the wrong kind of thing. */
export function checkReferences(movement: Movement, elsewhere: (id: string) => boolean, report: Report): void {
  checkRepeatedIds(movement, report);
  const known = idsOf(movement);
  eachReference(movement, (reference) => {
    const found = known.get(reference.id);
    if (found !== undefined ? reference.to.includes(found) : elsewhere(reference.id)) return;
    report({ path: reference.path, id: reference.owner, ...missing(reference, found, known) });
  });
}

function missing(
  reference: { readonly id: string; readonly to: readonly Collection[] },
  found: Collection | undefined,
  known: ReadonlyMap<string, Collection>,
): { found: string; expected: string; remedy: string } {
  const wanted = reference.to.map((collection) => COLLECTIONS[collection]).join(' or ');
  const expected = `the id of ${wanted}`;
  const right = [...known].filter(([, collection]) => reference.to.includes(collection)).map(([id]) => id);
  const near = nearIn(reference.id, right);
  const remedy =
    near.length > 0
      ? `near in spelling: ${near.map((id) => `“${id}”`).join(', ')}`
      : `name ${wanted} that exists, or add it`;
  const what = found === undefined ? 'which nothing has' : `which is ${COLLECTIONS[found]}`;
  return { found: `the id “${reference.id}”, ${what}`, expected, remedy };
}

function checkRepeatedIds(movement: Movement, report: Report): void {
  const seen = new Map<string, string>();
  for (const collection of collectionNames) {
    movement[collection].forEach((item, index) => {
      const first = seen.get(item.id);
      if (first === undefined) seen.set(item.id, `${collection}[${index}].id`);
      else {
        report({
          path: [collection, index, 'id'],
          id: item.id,
          found: `the id “${item.id}” a second time`,
          expected: 'an id that nothing else has',
          remedy: `rename it here or at ${first}, and what refers to it`,
        });
      }
    });
  }
}
