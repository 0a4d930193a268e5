/** The same place in words. */
import { otherThan, type RuleKindInWords } from './kind.ts';

/** "The same place" on slips and in sentences. */
export const samePlaceInWords: RuleKindInWords<'samePlace'> = {
  heading: 'same place',
  asked: 'the same place as another',
  said: ({ points }, name) => `the same place of ${name(points[0])} and ${name(points[1])}`,
  seen: ({ points }, from, name) => `as ${name(otherThan(points, from))}`,
};
