/** Text of a maker made harmless for whatever shows it: terminal, table, drawing, drill program. */

/**
 * Characters that turn the direction of what follows, or show nothing while they act: marks of direction (Unicode 9.0
 * to 16.0, UAX #9: ALM, LRM, RLM, LRE to RLO, LRI to PDI), joined spaces of no width, soft hyphen, tags, the byte order
 * mark, and what separates lines and paragraphs without being a line break.
 */
const UNSEEN =
  /[\u00AD\u061C\u180E\u200B\u200E\u200F\u2028\u2029\u202A-\u202E\u2060-\u2064\u2066-\u206F\uFEFF\uFFF9-\uFFFB\u{E0000}-\u{E007F}]/gu;
/** Halves of a pair that lost the other half, and the two codes that are no characters in any text. */
const BROKEN = /[\p{Cs}\uFFFE\uFFFF]/gu;

/**
 * One line of text as it may be shown: controls and line breaks become blanks, marks of direction and unseen characters
 * go, halves of pairs become the sign for a lost character. Ordinary text of any script stays as it is.
 */
export function shownText(text: string): string {
  return text
    .replace(/\p{Cc}/gu, ' ')
    .replace(UNSEEN, '')
    .replace(BROKEN, '\uFFFD');
}

/** The same for text of several lines: line breaks stay. */
export function shownLines(text: string): string {
  return text.replace(/\r\n?/g, '\n').split('\n').map(shownText).join('\n');
}
