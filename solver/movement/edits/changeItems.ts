/** Edits that add, change, move, order and rename single items. */
import { axesOf } from '../checks/axesOf.ts';
import { nearIn } from '../read/nearSpelling.ts';
import { eachReference } from '../references/eachReference.ts';
import { idsOf } from '../references/idsOf.ts';
import type { Movement } from '../schema.ts';
import type { AddEdit, EditOf } from './edit.ts';
import { draftItems, type Item, itemsOf, locate, nothingCalled, refused, soundItem } from './items.ts';
import { type EditPlan, recipe } from './recipe.ts';

/** Puts a new item into a list, at the end or at an index; refuses what the schema refuses. */
export function planAdd(movement: Movement, edit: AddEdit): EditPlan {
  const sound = soundItem(edit.to, edit.item);
  if (sound.kind === 'refused') return sound;
  const { length } = movement[edit.to];
  const at = edit.at ?? length;
  if (!Number.isInteger(at) || at < 0 || at > length) return refused({ kind: 'noSuchTurn', place: at, length });
  return recipe((draft) => {
    draftItems(draft, edit.to).splice(at, 0, sound.item);
  });
}

/** Sets and unsets fields of one item; its id stays. */
export function planChange(movement: Movement, edit: EditOf<'change'>): EditPlan {
  const found = locate(movement, edit.id);
  if (found === undefined) return nothingCalled(edit.id);
  const next = changed(found.item, edit.set, edit.unset);
  if (
    edit.unset?.includes('id') ||
    (edit.set && Object.hasOwn(edit.set, 'id') && Reflect.get(edit.set, 'id') !== edit.id)
  ) {
    return refused({ kind: 'idByRenaming', part: edit.id });
  }
  return replaceItem(movement, edit.id, next);
}

/** Puts another item in the place of the one that has the id. */
export function replaceItem(movement: Movement, id: string, next: unknown): EditPlan {
  const found = locate(movement, id);
  if (found === undefined) return nothingCalled(id);
  const sound = soundItem(found.collection, next);
  if (sound.kind === 'refused') return sound;
  return recipe((draft) => {
    draftItems(draft, found.collection)[found.index] = sound.item;
  });
}

/** A copy with fields set and removed; a field set to undefined is removed. */
export function changed(
  item: Readonly<Record<string, unknown>>,
  set: Readonly<Record<string, unknown>> = {},
  unset: readonly string[] = [],
): Record<string, unknown> {
  const entries = Object.entries({ ...item, ...set });
  return Object.fromEntries(entries.filter(([field, value]) => value !== undefined && !unset.includes(field)));
}

/** Moves points; what stands at the same place (a pipe, a point joined by a rule) goes along unless it is named itself. */
export function planMove(movement: Movement, edit: EditOf<'move'>): EditPlan {
  const moves: { collection: 'arbors' | 'posts' | 'marks'; index: number; item: Item }[] = [];
  for (const { id, at } of withCompany(movement, edit.places)) {
    const found = locate(movement, id);
    if (found === undefined) return nothingCalled(id);
    const { collection, index, item } = found;
    if (collection !== 'arbors' && collection !== 'posts' && collection !== 'marks') {
      return refused({ kind: 'noPlaceOfItsOwn', part: id });
    }
    const sound = soundItem(collection, { ...item, at: [...at] });
    if (sound.kind === 'refused') return sound;
    moves.push({ collection, index, item: sound.item });
  }
  return recipe((draft) => {
    for (const { collection, index, item } of moves) draftItems(draft, collection)[index] = item;
  });
}

/** The places with those of all points that stand at one of them. */
function withCompany(movement: Movement, places: EditOf<'move'>['places']): EditOf<'move'>['places'] {
  const axisOf = axesOf(movement);
  const named = new Set<string>(places.map(({ id }) => id));
  const placeOf = new Map(places.map(({ id, at }) => [axisOf(id), at]));
  const company = [...movement.arbors, ...movement.posts, ...movement.marks].flatMap(({ id }) => {
    const at = named.has(id) ? undefined : placeOf.get(axisOf(id));
    return at ? [{ id, at }] : [];
  });
  return [...places, ...company];
}

/** Moves an item to another index of its list. */
export function planReorder(movement: Movement, edit: EditOf<'reorder'>): EditPlan {
  const found = locate(movement, edit.id);
  if (found === undefined) return nothingCalled(edit.id);
  const list = itemsOf(movement, found.collection);
  const last = list.length - 1;
  if (!Number.isInteger(edit.to) || edit.to < 0 || edit.to > last) {
    return refused({ kind: 'noSuchTurn', place: edit.to, length: list.length });
  }
  return recipe((draft) => {
    const items = draftItems(draft, found.collection);
    items.splice(found.index, 1);
    items.splice(edit.to, 0, found.item);
  });
}

/** Gives an item another id, in every place that refers to it. */
export function planRename(movement: Movement, edit: EditOf<'rename'>): EditPlan {
  const { from, to } = edit;
  const known = idsOf(movement);
  const found = locate(movement, from);
  if (found === undefined) {
    const [near] = nearIn(from, known.keys());
    return refused({ kind: 'unknownPart', id: from, ...(near === undefined ? {} : { near }) });
  }
  if (from === to) return refused({ kind: 'sameName', part: from });
  if (known.has(to)) return refused({ kind: 'nameTaken', wanted: to });
  const sound = soundItem(found.collection, { ...found.item, id: to });
  if (sound.kind === 'refused') return sound;
  return recipe((draft) => {
    eachReference(movement, (reference) => {
      if (reference.id === from) setAt(draft, reference.path, to);
    });
    setAt(draft, [found.collection, found.index, 'id'], to);
  });
}

/** Sets one value deep in a draft. The path comes from `eachReference` for the same movement, so every step exists. */
function setAt(draft: object, path: readonly (string | number)[], value: unknown): void {
  const field = path.at(-1);
  let holder: object = draft;
  for (const key of path.slice(0, -1)) holder = Reflect.get(holder, key) as object; // it exists and is no leaf
  if (field !== undefined) Reflect.set(holder, field, value);
}
