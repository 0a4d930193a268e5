/** A distance in words. */
import { otherThan, type RuleKindInWords } from './kind.ts';

/** "A distance" on slips and in sentences. */
export const distanceInWords: RuleKindInWords<'distance'> = {
  heading: 'distance',
  asked: 'a distance',
  noun: 'distance',
  said: ({ points }, name) => `the distance from ${name(points[0])} to ${name(points[1])}`,
  seen: ({ points }, from, name) => `from ${name(otherThan(points, from))}`,
};
