/** Small records that the shell keeps for itself between runs (recent files, window place, recovery). */
import { mkdir, readFile, rename, rm } from 'node:fs/promises';
import { dirname } from 'node:path';
import * as z from 'zod/mini';
import { atomicWrite } from './atomicWrite.ts';
import { codeOf } from './fileTrouble.ts';
import { inPathQueue } from './pathQueue.ts';

/** Version of the records' shapes; one with a higher number was written by a newer program and is left as it is. */
const RECORD_VERSION = 1;
/** Ending of a damaged record that was set aside. */
export const DAMAGED = '.damaged';

const versioned = z.object({ recordVersion: z.optional(z.number()) });

/** A record; or that there is none, that it was damaged and set aside, or is a newer program's; or could not be read. */
export type KeptReading<Value> =
  | { readonly kind: 'kept'; readonly value: Value }
  | { readonly kind: 'none' | 'damaged' | 'newer' }
  | { readonly kind: 'unreadable'; readonly error: unknown };

/** Reads a record and checks its shape. A damaged one is set aside with `.damaged` at its end, never thrown away. */
export async function readKept<Schema extends z.ZodMiniType>(
  path: string,
  schema: Schema,
): Promise<KeptReading<z.output<Schema>>> {
  let text: string;
  try {
    text = await readFile(path, 'utf8');
  } catch (error) {
    return codeOf(error) === 'ENOENT' ? { kind: 'none' } : { kind: 'unreadable', error };
  }
  const value = parsed(text);
  const head = versioned.safeParse(value);
  if (head.success && (head.data.recordVersion ?? 1) > RECORD_VERSION) return { kind: 'newer' };
  const result = schema.safeParse(value);
  if (result.success) return { kind: 'kept', value: result.data };
  // Where it cannot be set aside it stays, and the next write takes its place.
  await rename(path, path + DAMAGED).catch(() => undefined);
  return { kind: 'damaged' };
}

function parsed(text: string): unknown {
  try {
    return JSON.parse(text);
  } catch {
    // A damaged record: no shape fits it.
    return undefined;
  }
}

/** Writes a record whole or not at all, making its folder. */
export function writeKept(path: string, value: object): Promise<void> {
  return inPathQueue(path, async () => {
    await mkdir(dirname(path), { recursive: true });
    await atomicWrite(path, JSON.stringify({ ...value, recordVersion: RECORD_VERSION }));
  });
}

/** Takes a record away; one that is not there is fine. */
export function dropKept(path: string): Promise<void> {
  return inPathQueue(path, () => rm(path, { force: true }));
}
