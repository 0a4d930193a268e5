/** A shared difference in words. */
import { counted } from '../lists.ts';
import type { RuleKindInWords } from './kind.ts';

/** "Share the difference" on slips and in sentences. */
export const shareDifferenceInWords: RuleKindInWords<'shareDifference'> = {
  heading: 'share the difference',
  asked: 'a shared difference',
  said: ({ point, among }, name) => `the shared difference of ${counted(among.length, 'length')} of ${name(point)}`,
  seen: ({ among }) => `among ${counted(among.length, 'length')}`,
};
