/** An even spacing in words. */
import { listed } from '../lists.ts';
import type { RuleKindInWords } from './kind.ts';

/** "An even spacing" on slips and in sentences. */
export const evenSpacingInWords: RuleKindInWords<'evenSpacing'> = {
  heading: 'even spacing',
  asked: 'an even spacing',
  said: ({ points, centre }, name) => `the even spacing of ${listed(points.map(name))} about ${name(centre)}`,
  seen: ({ centre }, _, name) => `about ${name(centre)}`,
};
