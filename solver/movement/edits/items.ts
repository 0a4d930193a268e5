/** Items of the document by their id, and the schema that each has to satisfy. */
import type { Draft } from 'immer';
import type { z } from 'zod';
import { opening, plate, wall } from '../case.ts';
import { coupling } from '../couplings/couplings.ts';
import { arbor, mark, post } from '../points.ts';
import { schemaProblems } from '../read/schemaProblems.ts';
import { reading } from '../reading.ts';
import { type Collection, collectionNames } from '../references/collections.ts';
import { rule } from '../rule.ts';
import type { Movement } from '../schema.ts';
import { indication } from '../turning.ts';
import { wheel } from '../wheel.ts';
import type { Refused } from './edit.ts';
import type { EditRefusal } from './refusal.ts';

const SCHEMAS: Readonly<Record<Collection, z.ZodType>> = {
  arbors: arbor,
  wheels: wheel,
  posts: post,
  marks: mark,
  plates: plate,
  walls: wall,
  openings: opening,
  rules: rule,
  couplings: coupling,
  indications: indication,
  readings: reading,
};

/** An item with whatever fields it has, known or not. */
export type Item = { readonly id: string; readonly at?: unknown } & Readonly<Record<string, unknown>>;

/** An item with the list that it stands in and its index there. */
export interface Located {
  readonly collection: Collection;
  readonly index: number;
  readonly item: Item;
}

/** Where an id stands, or undefined. */
export function locate(movement: Movement, id: string): Located | undefined {
  for (const collection of collectionNames) {
    const list = itemsOf(movement, collection);
    const index = list.findIndex((item) => item.id === id);
    const item = list[index];
    if (item !== undefined) return { collection, index, item };
  }
  return undefined;
}

/** A list of the document with its unknown fields in view. */
export function itemsOf(movement: Movement, collection: Collection): readonly Item[] {
  // Items are records with an id; Movement's types hide the unknown fields that they may have beside.
  return movement[collection] as readonly unknown[] as readonly Item[];
}

/** The same list of a draft, to be changed. Only values that `soundItem` has passed may be put in. */
export function draftItems(draft: Draft<Movement>, collection: Collection): Item[] {
  return draft[collection] as unknown[] as Item[]; // as above
}

/** An edit that does not apply, for this reason. */
export function refused(why: EditRefusal): Refused {
  return { kind: 'refused', why };
}

/** The refusal of an id that the movement does not have. */
export function nothingCalled(id: string): Refused {
  return refused({ kind: 'unknownPart', id });
}

/** The item as its schema reads it (defaults filled in), or why it is none. */
export function soundItem(
  collection: Collection,
  value: unknown,
): { readonly kind: 'sound'; readonly item: Item } | Refused {
  return soundValue<Item>(SCHEMAS[collection], value);
}

/** A value as a schema reads it, or why it does not. `T` must be what the schema gives. */
export function soundValue<T>(
  schema: z.ZodType,
  value: unknown,
): { readonly kind: 'sound'; readonly item: T } | Refused {
  const result = schema.safeParse(value);
  if (result.success) return { kind: 'sound', item: result.data as T }; // by the caller's promise
  const problems = schemaProblems(result.error.issues, value);
  return refused({ kind: 'unsound', problems });
}
