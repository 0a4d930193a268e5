/** Copying parts of a movement: chosen arbors with their wheels and pipes, and the rules among what is copied. */

import type { PartId } from '../../solver/movement/ids.ts';
import type { Edit, Parts } from '../../solver/movement/index.ts';
import { pointsOfRule } from '../../solver/movement/index.ts';
import type { Movement, Rule } from '../../solver/movement/schema.ts';

/** What pasting adds; rules that also speak of something else are left behind, and held places too. */
export function partsCopied(movement: Movement, chosen: readonly PartId[]): Parts {
  const ids = new Set<string>(chosen);
  for (const wheel of movement.wheels) if (ids.has(wheel.id)) ids.add(wheel.arbor);
  for (const arbor of movement.arbors) if (arbor.ridesOn && ids.has(arbor.ridesOn)) ids.add(arbor.id);
  const taken = <Item extends { readonly id: string }>(list: readonly Item[]): Item[] =>
    list.filter(({ id }) => ids.has(id));
  const parts = {
    arbors: taken(movement.arbors),
    wheels: movement.wheels.filter(({ arbor }) => ids.has(arbor)),
    posts: taken(movement.posts),
    marks: taken(movement.marks),
    walls: taken(movement.walls),
    rules: rulesCopied(movement, ids),
  };
  return parts as unknown as Parts; // items of a movement are items as a file would hold them
}

/** Rules among what is copied; one that names a rule needs that too. */
function rulesCopied(movement: Movement, ids: ReadonlySet<string>): readonly Rule[] {
  const among = movement.rules.filter(
    (rule) => rule.kind !== 'held' && pointsOfRule(movement, rule).every((point) => ids.has(point)),
  );
  const copied = new Set(among.map(({ id }) => id));
  return among.filter((rule) => !('among' in rule) || rule.among.every((id) => copied.has(id)));
}

/**
 * Copies go down and to the right of what they were copied from, so that they are seen. A name that is taken gets
 * the next free number, so that lists and findings tell the copy from its original.
 */
export function pasteEdit(movement: Movement, parts: Parts, away: number): Edit {
  const { arbors, wheels, posts, marks, walls } = movement;
  const taken = new Set([arbors, wheels, posts, marks, walls].flat().map(({ name }) => name));
  const renamed = Object.entries(parts).map(([list, items]) => [
    list,
    list === 'rules' ? items : (items as readonly Named[]).map((item) => ({ ...item, ...freeName(item, taken) })), // every other list copied is of named parts
  ]);
  return { kind: 'paste', parts: Object.fromEntries(renamed) as Parts, by: [away, -away] }; // the same lists as before
}

/** A part that may have a name. */
interface Named {
  readonly name?: string;
}

function freeName({ name }: Named, taken: Set<string | undefined>): Named {
  if (!name) return {};
  const stem = name.replace(/ \d+$/, '');
  let free = name;
  for (let number = 2; taken.has(free); number++) free = `${stem} ${number}`;
  taken.add(free);
  return { name: free };
}
