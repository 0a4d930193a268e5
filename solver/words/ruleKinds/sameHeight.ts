/** Same height in words. */
import type { RuleKindInWords } from './kind.ts';

/** "Same height" on slips and in sentences. */
export const sameHeightInWords: RuleKindInWords<'sameHeight'> = {
  heading: 'same height',
  asked: 'the same height as another',
  said: ({ point, of }, name) => `the same height of ${name(point)} and ${name(of)}`,
  seen: ({ point, of }, from, name) => `as ${name(point === from ? of : point)}`,
};
