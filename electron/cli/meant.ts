/** Which part of a movement a word of the command line means: its name in any case of letters, what it is called, or its id. */
import type { Speaker } from '../../solver/words/index.ts';

/**
 * Things among `ids` that `text` means; more than one where a name stands twice. An id comes before a name.
 *
 * @param said what a thing is called; a part's or a rule's words
 */
export function meantBy<Id extends string>(text: string, ids: readonly Id[], said: (id: Id) => string): readonly Id[] {
  const exact = ids.filter((id) => id === text);
  if (exact.length > 0) return exact;
  const plain = (words: string): string => words.trim().toLowerCase().replace(/\s+/g, ' ');
  return ids.filter((id) => plain(said(id)) === plain(text));
}

/** Parts of one sort that `text` means, by name or id. */
export function partsMeant<Id extends string>(
  text: string,
  parts: readonly { readonly id: Id; readonly name?: string | undefined }[],
  { name }: Speaker,
): readonly Id[] {
  const called = new Map(parts.map((part) => [part.id, part.name]));
  const ids = parts.map(({ id }) => id);
  const byWords = meantBy(text, ids, name);
  // Two parts with one name have other words each; the bare name means both.
  return byWords.length > 0 ? byWords : meantBy(text, ids, (id) => called.get(id) ?? '');
}
