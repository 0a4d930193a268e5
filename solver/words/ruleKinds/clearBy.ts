/** A stated gap in words. */
import { type RuleKindInWords, standsOn } from './kind.ts';

/** "A stated gap" on slips and in sentences. */
export const clearByInWords: RuleKindInWords<'clearBy'> = {
  heading: 'clear by',
  asked: 'a stated gap',
  noun: 'gap',
  said: ({ parts }, name) => `the gap of ${name(parts[0])} and ${name(parts[1])}`,
  seen: ({ parts: [a, b] }, from, name, movement) => `of ${name(standsOn(movement, a, from) ? b : a)}`,
  short: 'clear',
};
