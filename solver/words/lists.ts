/** Words in a row, and things counted. */

/** "a", "a and b", "a, b and c". */
export function listed(words: readonly string[], last: 'and' | 'or' = 'and'): string {
  if (words.length < 2) return words.join('');
  return `${words.slice(0, -1).join(', ')} ${last} ${words.at(-1)}`;
}

/** "1 file", "2 files"; `many` where the plural is not made by an s. */
export function counted(count: number, one: string, many = `${one}s`): string {
  return `${count} ${count === 1 ? one : many}`;
}

/** The same words as the beginning of a sentence. */
export function asSentence(words: string): string {
  return words.charAt(0).toUpperCase() + words.slice(1);
}
