/** What changed between two revisions of a movement, item by item and field by field, as the file holds it. */

import { COLLECTIONS, type Collection } from '../../movement/index.ts';
import type { Made, Movement } from '../../movement/schema.ts';

/** What a change is of: an item of a list, what was made of a point, or a field of the document. */
export type ChangeOf =
  | { readonly kind: 'item'; readonly list: Collection; readonly id: string }
  | { readonly kind: 'made'; readonly point: string; readonly plate: string | undefined }
  | { readonly kind: 'document'; readonly field: string };

/** One difference between two revisions; values as the file has them, mm and degrees. */
export type Change = { readonly of: ChangeOf } & (
  | { readonly kind: 'added'; readonly after: unknown }
  | { readonly kind: 'removed'; readonly before: unknown }
  /** `path` leads to the field within the item; it is empty where the whole differs. */
  | { readonly kind: 'changed'; readonly path: readonly string[]; readonly before: unknown; readonly after: unknown }
);

/** Fields that are told item by item, and those that say nothing of the movement. */
const LISTED: ReadonlySet<string> = new Set(['format', 'version', 'made', ...Object.keys(COLLECTIONS)]);

/** All changes in the order of the file: additions, removals, and each field that differs. */
export function changesBetween(before: Movement, after: Movement): readonly Change[] {
  const changes: Change[] = [];
  const fields = new Set([...Object.keys(before), ...Object.keys(after)]);
  const [old, now] = [before, after] as readonly Readonly<Record<string, unknown>>[]; // a document is a record of its fields
  for (const field of fields) {
    if (!LISTED.has(field)) changes.push(...fieldChanges({ kind: 'document', field }, [], old?.[field], now?.[field]));
  }
  changes.push(...madeChanges(before, after));
  for (const list of Object.keys(COLLECTIONS) as Collection[]) {
    // The record's own keys.
    changes.push(...listChanges(list, before[list], after[list]));
  }
  return changes;
}

/** What was made, point by point and plate by plate. */
function madeChanges(before: Movement, after: Movement): readonly Change[] {
  const keyOf = ({ point, plate }: Made): string => JSON.stringify([point, plate]);
  const of = ({ point, plate }: Made): ChangeOf => ({ kind: 'made', point, plate });
  const [old, now] = [before, after].map(({ made }) => new Map(made.map((each) => [keyOf(each), each])));
  const gone = [...(old ?? [])].filter(([key]) => !now?.has(key));
  return [
    ...gone.map(([, made]): Change => ({ kind: 'removed', of: of(made), before: made })),
    ...[...(now ?? [])].flatMap(([key, made]): Change[] => {
      const was = old?.get(key);
      if (!was) return [{ kind: 'added', of: of(made), after: made }];
      const isSame = JSON.stringify(was) === JSON.stringify(made);
      return isSame ? [] : [{ kind: 'changed', of: of(made), path: [], before: was, after: made }];
    }),
  ];
}

/** A part as the comparison sees it. */
interface Item {
  readonly id: string;
}

function listChanges(list: Collection, before: readonly Item[], after: readonly Item[]): readonly Change[] {
  const old = new Map(before.map((item) => [item.id, item]));
  const now = new Set(after.map(({ id }) => id));
  const of = ({ id }: Item): ChangeOf => ({ kind: 'item', list, id });
  return [
    ...before.filter(({ id }) => !now.has(id)).map((item): Change => ({ kind: 'removed', of: of(item), before: item })),
    ...after.flatMap((item): readonly Change[] => {
      const was = old.get(item.id);
      return was ? fieldChanges(of(item), [], was, item) : [{ kind: 'added', of: of(item), after: item }];
    }),
  ];
}

/** Differences of two values, down to the fields; arrays are compared place by place. */
function fieldChanges(of: ChangeOf, path: readonly string[], before: unknown, after: unknown): readonly Change[] {
  if (Object.is(before, after)) return [];
  if (isRecord(before) && isRecord(after)) {
    const keys = [...new Set([...Object.keys(before), ...Object.keys(after)])];
    return keys.flatMap((key) => fieldChanges(of, [...path, key], before[key], after[key]));
  }
  return isEmpty(before) && isEmpty(after) ? [] : [{ kind: 'changed', of, path, before, after }];
}

/** Objects and arrays alike: an array's keys are its indices. */
const isRecord = (value: unknown): value is Readonly<Record<string, unknown>> =>
  typeof value === 'object' && value !== null;

/** Nothing, or a list of nothing: to a reader the same. */
const isEmpty = (value: unknown): boolean => value === undefined || (Array.isArray(value) && value.length === 0);
