/**
 * Undo: an immutable document with the transactions that led to it, each as patches there and back.
 *
 * One gesture is one transaction. Previews while dragging never come here. Time is an argument, in ms; nothing
 * here reads a clock.
 */
import { applyPatches, enablePatches, type Patch } from 'immer';
import { editWithPatches } from '../edits/applyEdit.ts';
import type { Edit, Refused } from '../edits/edit.ts';
import type { Movement } from '../schema.ts';

enablePatches();

export type Selection = readonly string[];

/** One step of undo: what was done, its patches there and back, and what was chosen before and after. */
export interface Transaction {
  /** What was done, for the menu: "move pillar P2". */
  readonly label: string;
  readonly timeMs: number;
  /** Transactions that follow each other with the same group become one, like a row of key presses. */
  readonly group?: string;
  readonly patches: readonly Patch[];
  readonly inverse: readonly Patch[];
  readonly selectionBefore: Selection;
  readonly selectionAfter: Selection;
}

/** A document with the steps that led to it and those that were undone. */
export interface History {
  readonly movement: Movement;
  /** Oldest first. */
  readonly done: readonly Transaction[];
  /** The next to redo last. */
  readonly undone: readonly Transaction[];
}

/** What a gesture wants to do. */
export interface Deed {
  readonly label: string;
  readonly edit: Edit;
  readonly timeMs: number;
  readonly group?: string;
  readonly selectionBefore?: Selection;
  readonly selectionAfter?: Selection;
}

/** Longest history kept, transactions. */
const LONGEST = 1000;
/** Transactions of one group are joined when they follow within this, ms: a pause ends a row of key presses. */
const JOIN_WITHIN_MS = 2000;

/** A history that begins with a movement. */
export function startHistory(movement: Movement): History {
  return { movement, done: [], undone: [] };
}

/** Does one deed. What was undone before is forgotten. A deed that changes nothing leaves no trace. */
export function commit(history: History, deed: Deed): { readonly kind: 'done'; readonly history: History } | Refused {
  const result = editWithPatches(history.movement, deed.edit);
  if (result.kind === 'refused') return result;
  if (result.patches.length === 0) return { kind: 'done', history };
  const transaction: Transaction = {
    label: deed.label,
    timeMs: deed.timeMs,
    ...(deed.group === undefined ? {} : { group: deed.group }),
    patches: result.patches,
    inverse: result.inverse,
    selectionBefore: deed.selectionBefore ?? [],
    selectionAfter: deed.selectionAfter ?? deed.selectionBefore ?? [],
  };
  const done = joined(history, transaction).slice(-LONGEST);
  return { kind: 'done', history: { movement: result.movement, done, undone: [] } };
}

function joined({ done, undone }: History, next: Transaction): readonly Transaction[] {
  const last = done.at(-1);
  const follows =
    last?.group !== undefined &&
    last.group === next.group &&
    undone.length === 0 &&
    next.timeMs - last.timeMs >= 0 &&
    next.timeMs - last.timeMs <= JOIN_WITHIN_MS;
  if (last === undefined || !follows) return [...done, next];
  const both: Transaction = {
    ...next,
    patches: [...last.patches, ...next.patches],
    inverse: [...next.inverse, ...last.inverse],
    selectionBefore: last.selectionBefore,
  };
  return [...done.slice(0, -1), both];
}

/** A step back or forth: the history after it, what was undone or redone, and what to select. */
export interface Step {
  readonly history: History;
  readonly transaction: Transaction;
  readonly selection: Selection;
}

/** Takes back the last transaction; undefined where there is none. */
export function undo({ movement, done, undone }: History): Step | undefined {
  const transaction = done.at(-1);
  if (transaction === undefined) return undefined;
  const before = applyPatches(movement, transaction.inverse);
  return {
    history: { movement: before, done: done.slice(0, -1), undone: [...undone, transaction] },
    transaction,
    selection: transaction.selectionBefore,
  };
}

/** Does again what was undone last; undefined where there is nothing. */
export function redo({ movement, done, undone }: History): Step | undefined {
  const transaction = undone.at(-1);
  if (transaction === undefined) return undefined;
  const after = applyPatches(movement, transaction.patches);
  return {
    history: { movement: after, done: [...done, transaction], undone: undone.slice(0, -1) },
    transaction,
    selection: transaction.selectionAfter,
  };
}
