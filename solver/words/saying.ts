/** Sentences by kind: how an outcome and its table of sentences are brought together. */
import type { Speaker } from './speaker.ts';

/** One sentence for every kind of an outcome; a kind without one does not compile. */
export type Sentences<Told extends { readonly kind: string }> = {
  readonly [K in Told['kind']]: (told: Told & { readonly kind: K }, speaker: Speaker) => string;
};

/** What a table of sentences says of one outcome. */
export function sentenceOf<Told extends { readonly kind: string }>(
  sentences: Sentences<Told>,
  told: Told,
  speaker: Speaker,
): string {
  // The table pairs every kind with its own fields, which the compiler cannot follow through an index.
  const say = sentences[told.kind as Told['kind']] as (told: Told, speaker: Speaker) => string;
  return say(told, speaker);
}
