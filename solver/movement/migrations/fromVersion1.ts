/**
 * Version 1 to 2. What version 2 adds may all be absent (a rule that is told to check, rules that a hole lets stand, places
 * in several plates), and the order of `rules` keeps its meaning: only the number changes.
 */

/** The document with the number of version 2. */
export function fromVersion1(document: Readonly<Record<string, unknown>>): Record<string, unknown> {
  return { ...document, version: 2 };
}
