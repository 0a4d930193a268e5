/** What changed between two revisions of a movement, item by item. */

import { namer } from '../../marking/index.ts';
import { COLLECTIONS, type Collection } from '../../movement/index.ts';
import type { Made, Movement, Reading } from '../../movement/schema.ts';

/** One difference between two revisions. */
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
  const fields = new Set([...Object.keys(before), ...Object.keys(after)]);
  const [old, now] = [before, after] as readonly Readonly<Record<string, unknown>>[]; // a document is a record of its fields
  for (const head of fields) {
    if (!LISTED.has(head)) changes.push(...fieldChanges(IN_WORDS[head] ?? head, '', old?.[head], now?.[head]));
  }
  changes.push(...madeChanges(before, after));
  for (const [list, word] of Object.entries(COLLECTIONS) as [Collection, string][]) {
    // The record's own keys and words: "an arbor" without its article.
    changes.push(...listChanges(word.replace(/^an? /, ''), before[list], after[list]));
  }
  return changes;
}

/** Fields that are told item by item, and those that say nothing of the movement. */
const LISTED: ReadonlySet<string> = new Set(['format', 'version', 'made', ...Object.keys(COLLECTIONS)]);
const IN_WORDS: Readonly<Record<string, string>> = {
  limits: 'least gaps',
  cures: 'limits of cures',
  stackTolerance: '± of stacks',
  toothTables: 'own tooth tables',
  constants: 'own periods',
  accepted: 'accepted findings',
};

/** What was made, point by point and plate by plate. */
function madeChanges(before: Movement, after: Movement): readonly Change[] {
  const keyOf = ({ point, plate }: Made) => JSON.stringify([point, plate]);
  const [old, now] = [before, after].map(({ made }) => new Map(made.map((each) => [keyOf(each), each])));
  const label = namer(after);
  const whatOf = ({ point, plate }: Made) => `${label(point)}${plate === undefined ? '' : ` in ${plate}`}`;
  const changes: Change[] = [];
  for (const [key, made] of old ?? []) {
    const what = whatOf(made);
    if (!now?.has(key)) changes.push({ kind: 'removed', what, says: `${what}: no longer ${madeSays(made)}.` });
  }
  for (const [key, made] of now ?? []) {
    const [was, what] = [old?.get(key), whatOf(made)];
    const [a, b] = [was && madeSays(was), madeSays(made)];
    if (a === undefined) changes.push({ kind: 'added', what, says: `${what}: ${b}.` });
    else if (a !== b) changes.push({ kind: 'changed', what, before: a, after: b, says: `${what}: ${a} → ${b}.` });
  }
  return changes;
}

const STATES = { toMark: 'to be marked', marked: 'marked', drilled: 'drilled' } as const;

function madeSays({ state, at, plusMinus, date, note }: Made): string {
  const place = at ? ` at ${at[0]}, ${at[1]}${plusMinus === undefined ? '' : ` ±${plusMinus}`}` : '';
  return `${STATES[state]}${place}${date === undefined ? '' : ` on ${date}`}${note === undefined ? '' : ` (${note})`}`;
}

/** A part as the comparison sees it. */
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
    if (!now.has(item.id)) {
      changes.push({ kind: 'removed', what: label(item), says: `Removed: ${label(item)}${figureOf(item)}.` });
    }
  }
  for (const item of after) {
    const was = old.get(item.id);
    if (!was) changes.push({ kind: 'added', what: label(item), says: `Added: ${label(item)}${figureOf(item)}.` });
    else changes.push(...fieldChanges(label(item), '', was, item));
  }
  return changes;
}

/** A reading is known by its figure: ", 34.64 of w1 and p1, 2026-02-14". */
function figureOf(item: Item & Partial<Pick<Reading, 'of' | 'value' | 'date'>>): string {
  if (item.of === undefined || item.value === undefined) return '';
  return `, ${item.value} of ${item.of.join(' and ')}${item.date === undefined ? '' : `, ${item.date}`}`;
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

/** A value in words: what stands in a record by the names of its fields. */
function shown(value: unknown): string {
  if (value === undefined) return 'none';
  if (typeof value === 'string') return value;
  if (Array.isArray(value)) return value.length === 0 ? 'none' : value.map(shown).join('; ');
  if (!isRecord(value)) return JSON.stringify(value);
  return Object.entries(value)
    .map(([field, each]) => `${field} ${shown(each)}`)
    .join(', ');
}

const capital = (text: string): string => `${text.charAt(0).toUpperCase()}${text.slice(1)}`;
