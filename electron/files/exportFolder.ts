/** Writing exported files into a folder that the maker chose. */
import { access } from 'node:fs/promises';
import { join } from 'node:path';
import { atomicWrite } from './atomicWrite.ts';
import { codeOf, fileTrouble } from './fileTrouble.ts';
import { inPathQueue } from './pathQueue.ts';

/** A file by its bare name, as text or bytes. */
export interface FileToWrite {
  readonly name: string;
  readonly content: string | Uint8Array;
}

/** The names that were written, or which file failed and why. */
export type WriteOutcome =
  | { readonly kind: 'written'; readonly names: readonly string[] }
  | { readonly kind: 'failed'; readonly says: string };

/** Characters that no file system of the three platforms takes in a name, and the separators of folders. */
// biome-ignore lint/suspicious/noControlCharactersInRegex: control characters are what is looked for
const NOT_IN_NAMES = /[\u0000-\u001f<>:"/\\|?*]/;
/** Names that Windows keeps for devices. */
const RESERVED = /^(con|prn|aux|nul|com\d|lpt\d)(\.|$)/i;
const MAX_NAME = 200;

/** Why a name is not a bare file name that every platform takes, or undefined when it is. */
export function nameTrouble(name: string): string | undefined {
  const bad = (why: string): string => `"${name}" is not a file name: ${why}. Use letters, digits, spaces, - and _.`;
  if (name.length === 0 || name.length > MAX_NAME) return bad(`its length must be 1 to ${MAX_NAME}`);
  if (NOT_IN_NAMES.test(name)) return bad('it holds a separator or a character that file systems refuse');
  if (RESERVED.test(name)) return bad('Windows keeps it for a device');
  if (/^\.|[. ]$/.test(name)) return bad('it begins with a dot, or ends with a dot or a space');
  return undefined;
}

/** The first trouble among all names, doubles (in any case of letters) included. */
export function namesTrouble(names: readonly string[]): string | undefined {
  const seen = new Set<string>();
  for (const name of names) {
    const trouble = nameTrouble(name);
    if (trouble) return trouble;
    if (seen.has(name.toLowerCase())) return `Two files are called "${name}"; each needs a name of its own.`;
    seen.add(name.toLowerCase());
  }
  return undefined;
}

/** Which of the names exist in the folder already. */
export async function presentNames(folder: string, names: readonly string[]): Promise<string[]> {
  const found: string[] = [];
  for (const name of names) {
    try {
      await access(join(folder, name));
      found.push(name);
    } catch (error) {
      if (codeOf(error) !== 'ENOENT') throw error;
    }
  }
  return found;
}

/** Writes all files, each whole or not at all; on a failure it says which were written before it. */
export async function writeIntoFolder(folder: string, files: readonly FileToWrite[]): Promise<WriteOutcome> {
  const trouble = namesTrouble(files.map((file) => file.name));
  if (trouble) return { kind: 'failed', says: trouble };
  const names: string[] = [];
  for (const file of files) {
    const path = join(folder, file.name);
    try {
      await inPathQueue(path, () => atomicWrite(path, file.content));
    } catch (error) {
      const before = names.length === 0 ? 'Nothing was written.' : `Written before it: ${names.join(', ')}.`;
      return { kind: 'failed', says: `${fileTrouble('written', path, error)} ${before}` };
    }
    names.push(file.name);
  }
  return { kind: 'written', names };
}
