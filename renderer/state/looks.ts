/** The two looks, and the pens that the bench takes from their tokens. */
import type { Pens } from '../bench/strokes/inkwell.ts';

export const LOOKS = { paper: 'Paper', layoutBlue: 'Layout blue' } as const;
export type Look = keyof typeof LOOKS;

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
