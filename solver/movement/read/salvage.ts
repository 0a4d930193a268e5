/**
 * What can still be read of a document that the schema refuses, so that the other checks can run on it and all
 * problems are told at once. It is never shown or saved.
 */
import type { z } from 'zod';
import { type Movement, movementSchema } from '../schema.ts';
import type { PathKey } from './problem.ts';

/** The part of a document that could be read, and what is known of the rest. */
export interface Salvage {
  readonly movement: Movement;
  /** The place in the file of an item of `movement`. */
  readonly pathInFile: (path: readonly PathKey[]) => readonly PathKey[];
  /** Ids that the file uses, of things that could not be read. */
  readonly unread: (id: string) => boolean;
}

/** The readable items of `value`, whose faults are `issues`; undefined where nothing can be made of it. */
export function salvage(value: object, issues: readonly z.core.$ZodIssue[]): Salvage | undefined {
  const dropped = droppedBy(value, issues);
  const rest: Record<string, unknown> = {};
  const kept = new Map<string, number[]>();
  const unreadIds = new Set<string>();
  let allUnread = false;
  const parts: readonly (readonly [string, unknown])[] = Object.entries(value);
  for (const [field, part] of parts) {
    const lost = dropped.get(field);
    if (lost === undefined) rest[field] = part;
    else if (lost === 'whole') allUnread = true;
    else if (Array.isArray(part)) {
      const items: readonly unknown[] = part;
      const indices = [...items.keys()].filter((index) => !lost.has(index));
      kept.set(field, indices);
      rest[field] = indices.map((index) => items[index]);
      for (const index of lost) for (const id of idsIn(items[index])) unreadIds.add(id);
    }
  }
  const result = movementSchema.safeParse(rest);
  if (!result.success) return undefined;
  return {
    // The schema's output differs from Movement only by index signatures for unknown fields.
    movement: result.data as Movement,
    pathInFile: ([field, index, ...more]) => {
      const original = typeof index === 'number' ? kept.get(String(field))?.[index] : undefined;
      return [field, original ?? index, ...more].filter((key) => key !== undefined);
    },
    unread: (id) => allUnread || unreadIds.has(id),
  };
}

type Dropped = Map<string, Set<number> | 'whole'>;

function droppedBy(value: object, issues: readonly z.core.$ZodIssue[]): Dropped {
  const dropped: Dropped = new Map();
  for (const { path } of issues) {
    const [field, index] = path;
    if (typeof field !== 'string') continue;
    const lost = dropped.get(field);
    if (typeof index !== 'number' || !Array.isArray(Reflect.get(value, field))) dropped.set(field, 'whole');
    else if (lost === undefined) dropped.set(field, new Set([index]));
    else if (lost !== 'whole') lost.add(index);
  }
  return dropped;
}

function idsIn(item: unknown): string[] {
  if (typeof item !== 'object' || item === null || !('id' in item)) return [];
  return typeof item.id === 'string' ? [item.id] : [];
}
