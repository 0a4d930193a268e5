/** The pens of the bench, from the tokens of the look that the page wears. */
import type { Pens } from './strokes/inkwell.ts';

const TOKENS = {
  ink: '--ink',
  soft: '--soft',
  faint: '--faint',
  chosen: '--chosen-line',
  scribe: '--scribe',
  sheet: '--sheet',
} as const;

/** The pens of the look that the page wears now, read from its style sheet. */
export function pensOfPage(page: HTMLElement): Pens {
  const style = getComputedStyle(page);
  const colour = (token: string): string => style.getPropertyValue(token).trim();
  return {
    ink: colour(TOKENS.ink),
    soft: colour(TOKENS.soft),
    faint: colour(TOKENS.faint),
    chosen: colour(TOKENS.chosen),
    scribe: colour(TOKENS.scribe),
    sheet: colour(TOKENS.sheet),
  };
}
