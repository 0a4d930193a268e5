/** The same radius in words. */
import { listed } from '../lists.ts';
import type { RuleKindInWords } from './kind.ts';

/** "The same radius" on slips and in sentences. */
export const sameRadiusInWords: RuleKindInWords<'sameRadius'> = {
  heading: 'same radius',
  asked: 'the same radius as another',
  said: ({ points, centre }, name) => `the same radius of ${listed(points.map(name))} from ${name(centre)}`,
  seen: ({ centre }, _, name) => `about ${name(centre)}`,
};
