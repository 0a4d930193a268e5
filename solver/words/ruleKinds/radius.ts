/** A radius in words. */
import { otherThan, type RuleKindInWords } from './kind.ts';

/** "A radius" on slips and in sentences. */
export const radiusInWords: RuleKindInWords<'radius'> = {
  heading: 'radius',
  asked: 'a radius',
  said: ({ point, centre }, name) => `the radius of ${name(point)} from ${name(centre)}`,
  seen: ({ point, centre }, from, name) => `from ${name(otherThan([point, centre], from))}`,
};
