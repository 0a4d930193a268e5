/** What changed between two revisions of a movement, item by item. */
import { COLLECTIONS, type Collection } from '../../movement/references/collections.ts';
import type { Movement } from '../../movement/schema.ts';

export interface Change {
  readonly kind: 'added' | 'removed' | 'changed';
  /** "wheel w1", "rule d2", "title". */
  readonly what: string;
  /** Path of the field within the item, for changes. */
  readonly field?: string;
  readonly before?: string;
  readonly after?: string;
  readonly says: string;
}

/** All changes in the order of the file: additions, removals, and each field that differs. */
export function changesBetween(before: Movement, after: Movement): readonly Change[] {
  const changes: Change[] = [];
  const heads = ['title', 'note', 'revision', 'date', 'display', 'limits', 'drive', 'made', 'accepted'] as const;
  for (const head of heads) changes.push(...fieldChanges(head, '', before[head], after[head]));
  for (const [list, word] of Object.entries(COLLECTIONS) as [Collection, string][]) {
    // The record's own keys and words: "an arbor" without its article.
    changes.push(...listChanges(word.replace(/^an? /, ''), before[list], after[list]));
  }
  return changes;
}

interface Item {
  readonly id: string;
  readonly name?: string;
}

function listChanges(word: string, before: readonly Item[], after: readonly Item[]): readonly Change[] {
  const old = new Map(before.map((item) => [item.id, item]));
  const now = new Map(after.map((item) => [item.id, item]));
  const label = (item: Item) => `${word} ${item.id}${item.name === undefined ? '' : ` (${item.name})`}`;
  const changes: Change[] = [];
  for (const item of before) {
    if (!now.has(item.id)) changes.push({ kind: 'removed', what: label(item), says: `Removed: ${label(item)}.` });
  }
  for (const item of after) {
    const was = old.get(item.id);
    if (!was) changes.push({ kind: 'added', what: label(item), says: `Added: ${label(item)}.` });
    else changes.push(...fieldChanges(label(item), '', was, item));
  }
  return changes;
}

/** Differences of two values, down to the fields; arrays are compared place by place. */
function fieldChanges(what: string, path: string, before: unknown, after: unknown): readonly Change[] {
  if (Object.is(before, after)) return [];
  if (isRecord(before) && isRecord(after)) {
    const keys = [...new Set([...Object.keys(before), ...Object.keys(after)])];
    return keys.flatMap((key) => fieldChanges(what, path === '' ? key : `${path}.${key}`, before[key], after[key]));
  }
  const [a, b] = [shown(before), shown(after)];
  if (a === b) return [];
  const field = path === '' ? {} : { field: path };
  const name = path === '' ? what : `${what}, ${path}`;
  return [{ kind: 'changed', what, ...field, before: a, after: b, says: `${capital(name)}: ${a} → ${b}.` }];
}

/** Objects and arrays alike: an array's keys are its indices. */
const isRecord = (value: unknown): value is Readonly<Record<string, unknown>> =>
  typeof value === 'object' && value !== null;

const shown = (value: unknown): string =>
  value === undefined ? 'none' : typeof value === 'string' ? value : JSON.stringify(value);

const capital = (text: string): string => `${text.charAt(0).toUpperCase()}${text.slice(1)}`;
