/** Small records that the shell keeps for itself between runs (recent files, window place, recovery). */
import { mkdir, readFile, rm } from 'node:fs/promises';
import { dirname } from 'node:path';
import type * as z from 'zod/mini';
import { atomicWrite } from './atomicWrite.ts';
import { codeOf } from './fileTrouble.ts';
import { inPathQueue } from './pathQueue.ts';

/**
 * Reads a record and checks its shape.
 *
 * @returns undefined where there is none or it does not fit the shape (it is then written anew in time)
 */
export async function readKept<Schema extends z.ZodMiniType>(
  path: string,
  schema: Schema,
): Promise<z.output<Schema> | undefined> {
  try {
    const parsed = schema.safeParse(JSON.parse(await readFile(path, 'utf8')));
    return parsed.success ? parsed.data : undefined;
  } catch (error) {
    // Missing is normal; a damaged record is worth a word on the terminal and no more.
    if (codeOf(error) !== 'ENOENT') console.error(`Kept record ${path} was not read: ${String(error)}`);
    return undefined;
  }
}

/** Writes a record whole or not at all, making its folder. */
export function writeKept(path: string, value: unknown): Promise<void> {
  return inPathQueue(path, async () => {
    await mkdir(dirname(path), { recursive: true });
    await atomicWrite(path, JSON.stringify(value));
  });
}

/** Takes a record away; one that is not there is fine. */
export function dropKept(path: string): Promise<void> {
  return inPathQueue(path, () => rm(path, { force: true }));
}
