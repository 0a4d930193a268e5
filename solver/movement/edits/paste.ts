/** Pasting copies of parts, such as a sub-train with its rules. */

import { emptyMovement } from '../emptyMovement.ts';
import { type Collection, collectionNames } from '../references/collections.ts';
import { eachReference } from '../references/eachReference.ts';
import { idsOf } from '../references/idsOf.ts';
import type { Movement } from '../schema.ts';
import type { EditOf, Refused } from './edit.ts';
import { freshId } from './freshId.ts';
import { draftItems, type Item, refused, soundItem } from './items.ts';
import { type EditPlan, recipe } from './recipe.ts';

/** Adds copies of parts under fresh ids that refer to each other as the originals did. */
export function planPaste(movement: Movement, edit: EditOf<'paste'>): EditPlan {
  const parts = soundParts(edit);
  if ('kind' in parts) return parts;
  const names = freshNames(movement, parts);
  if (names.size === 0) return refused({ kind: 'nothingToPaste' });
  const [dx, dy] = edit.by ?? [0, 0];
  const copies = parts.map(([collection, items]) => {
    const shifted = items.map((item) => shiftedBy(item, dx, dy));
    return [collection, renamedItems(collection, shifted, names)] as const;
  });
  for (const [collection, items] of copies) {
    for (const item of items) {
      const sound = soundItem(collection, item);
      if (sound.kind === 'refused') return sound;
    }
  }
  return recipe((draft) => {
    for (const [collection, items] of copies) draftItems(draft, collection).push(...items);
  });
}

type Copied = readonly (readonly [Collection, readonly Item[]])[];

function soundParts(edit: EditOf<'paste'>): Copied | Refused {
  const copied: [Collection, Item[]][] = [];
  for (const collection of collectionNames) {
    const items: Item[] = [];
    for (const value of edit.parts[collection] ?? []) {
      const sound = soundItem(collection, value);
      if (sound.kind === 'refused') return sound;
      items.push(sound.item);
    }
    if (items.length > 0) copied.push([collection, items]);
  }
  return copied;
}

/** A fresh id for every pasted one. */
function freshNames(movement: Movement, parts: Copied): Map<string, string> {
  const taken = new Set<string>(idsOf(movement).keys());
  const names = new Map<string, string>();
  for (const [, items] of parts) {
    for (const { id } of items) {
      const name = freshId(taken, id);
      taken.add(name);
      names.set(id, name);
    }
  }
  return names;
}

/** Sketch places and held places go along. */
function shiftedBy(item: Item, dx: number, dy: number): Item {
  const { at } = item;
  if (!Array.isArray(at) || at.length !== 2) return item;
  return { ...item, at: [Number(at[0]) + dx, Number(at[1]) + dy] };
}

function renamedItems(collection: Collection, items: readonly Item[], names: ReadonlyMap<string, string>): Item[] {
  const copies = structuredClone(items).map((item): Item => ({ ...item, id: names.get(item.id) ?? item.id }));
  // The items have been checked, so a document that holds them alone can be walked.
  const document = { ...emptyMovement(), [collection]: copies } as Movement;
  eachReference(document, ({ path, id }) => {
    const name = names.get(id);
    const field = path.at(-1);
    if (name === undefined || field === undefined) return;
    let holder: object = document;
    for (const key of path.slice(0, -1)) holder = Reflect.get(holder, key) as object; // the walk gave the path
    Reflect.set(holder, field, name);
  });
  return copies;
}
