/** A problem of a movement file: what stands in the way of reading it, and what the maker can do about it. */

export type PathKey = string | number;

/** One thing that stands in the way of reading a file, with its place and its remedy. */
export interface Problem {
  /** Where in the file, like `rules[3].wheels[1]`; empty for the file as a whole. */
  readonly path: string;
  /** Id of the thing that the path lies in, where it has one. */
  readonly id?: string;
  readonly found: string;
  readonly expected: string;
  readonly remedy: string;
  /** The four above as one whole sentence. */
  readonly says: string;
}

/** `['rules', 3, 'wheels', 1]` as `rules[3].wheels[1]`; a name that is not a plain word stands in quotes. */
export function pathText(keys: readonly PathKey[]): string {
  let text = '';
  for (const key of keys) {
    if (typeof key === 'number') text += `[${key}]`;
    else if (!/^[\p{L}_$][\p{L}\p{N}_$]*$/u.test(key)) text += `[${JSON.stringify(key)}]`;
    else text += text === '' ? key : `.${key}`;
  }
  return text;
}

/** A problem with its sentence made from its parts. `path` is keys, or text that is ready. */
export function problemAt(
  path: readonly PathKey[] | string,
  parts: { readonly id?: string | undefined; found: string; expected: string; remedy: string },
): Problem {
  const where = typeof path === 'string' ? path : pathText(path);
  const { id, found, expected, remedy } = parts;
  const whose = id === undefined ? '' : ` (“${id}”)`;
  const says = `${where === '' ? 'The file' : where}${whose}: found ${found}; expected ${expected}; ${remedy}.`;
  return { path: where, ...(id === undefined ? {} : { id }), found, expected, remedy, says };
}

/** A value of the file in a few words, for `found`: short values as they stand, long ones by what they are. */
export function inWords(value: unknown): string {
  if (value === undefined) return 'nothing';
  if (value === null || typeof value === 'boolean') return String(value);
  if (typeof value === 'number') return Number.isFinite(value) ? `${value}` : 'a number too large to hold';
  if (typeof value === 'string') return value.length > 60 ? `“${value.slice(0, 57)}…”` : `“${value}”`;
  if (Array.isArray(value)) return `a list of ${value.length}`;
  const keys = Object.keys(value);
  return keys.length === 0 ? 'an empty record' : `a record with ${keys.slice(0, 4).join(', ')}`;
}
