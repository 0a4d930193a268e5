/** A held place in words. */
import type { RuleKindInWords } from './kind.ts';

/** "A held place" on slips and in sentences. */
export const heldInWords: RuleKindInWords<'held'> = {
  heading: 'held place',
  asked: 'a held place',
  said: ({ point }, name) => `the held place of ${name(point)}`,
  seen: () => 'at its coordinates',
  short: 'held',
};
