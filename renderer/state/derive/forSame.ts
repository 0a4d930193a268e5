/** Results that are kept while what they were made from is the same: a drag asks the same things at every frame. */

/**
 * A function that remembers its last answer.
 *
 * @param keyOf what the answer depends on; it is made anew when one of these is another object or value
 */
export function forSame<Given extends readonly unknown[], Answer>(
  keyOf: (...given: Given) => readonly unknown[],
  make: (...given: Given) => Answer,
): (...given: Given) => Answer {
  let known: { readonly key: readonly unknown[]; readonly answer: Answer } | undefined;
  return (...given) => {
    const key = keyOf(...given);
    if (!known || key.length !== known.key.length || key.some((each, index) => each !== known?.key[index])) {
      known = { key, answer: make(...given) };
    }
    return known.answer;
  };
}
