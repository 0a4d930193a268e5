/** Ids are unique over the whole document, and every reference names something of the right kind. */
import { nearIn } from '../read/nearSpelling.ts';
import { type Problem, problemAt } from '../read/problem.ts';
import { COLLECTIONS, type Collection } from '../references/collections.ts';
import { eachReference } from '../references/eachReference.ts';
import { idsOf } from '../references/idsOf.ts';
import type { Movement } from '../schema.ts';

/** Problems of ids and references, in the order of the document. */
export function referenceProblems(movement: Movement): Problem[] {
  const problems = repeatedIds(movement);
  const known = idsOf(movement);
  eachReference(movement, (reference) => {
    const found = known.get(reference.id);
    if (found !== undefined && reference.to.includes(found)) return;
    problems.push(problemAt(reference.path, { id: reference.owner, ...missing(reference, found, known) }));
  });
  return problems;
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

function repeatedIds(movement: Movement): Problem[] {
  const seen = new Map<string, string>();
  const problems: Problem[] = [];
  for (const collection of Object.keys(COLLECTIONS) as Collection[]) {
    // the record's own keys
    movement[collection].forEach((item, index) => {
      const path = `${collection}[${index}].id`;
      const first = seen.get(item.id);
      if (first === undefined) seen.set(item.id, path);
      else
        problems.push(
          problemAt(path, {
            id: item.id,
            found: `the id “${item.id}” a second time`,
            expected: 'an id that nothing else has',
            remedy: `rename it here or at ${first}, and what refers to it`,
          }),
        );
    });
  }
  return problems;
}
