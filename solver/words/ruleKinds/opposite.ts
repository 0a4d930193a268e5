/** Straight opposite in words. */
import type { RuleKindInWords } from './kind.ts';

/** "Straight opposite" on slips and in sentences. */
export const oppositeInWords: RuleKindInWords<'opposite'> = {
  heading: 'straight opposite',
  asked: 'a place straight opposite another',
  said: ({ point, of, centre }, name) => `${name(point)} straight opposite ${name(of)} about ${name(centre)}`,
  seen: ({ point, of, centre }, from, name) => `${name(point === from ? of : point)} about ${name(centre)}`,
};
