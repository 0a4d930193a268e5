/** A shared difference in words. */
import type { RuleKindInWords } from './kind.ts';

/** "Share the difference" on slips and in sentences. */
export const shareDifferenceInWords: RuleKindInWords<'shareDifference'> = {
  heading: 'share the difference',
  asked: 'a shared difference',
  said: ({ point, among }, name) => `the shared difference of ${among.length} lengths of ${name(point)}`,
  seen: ({ among }) => `among ${among.length} lengths`,
};
