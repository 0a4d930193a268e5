/**
 * A direction in words. The file calls it `bearing`; a maker calls a bearing only what a pivot turns in.
 */
import type { RuleKindInWords } from './kind.ts';

/** "A direction" on slips and in sentences. */
export const bearingInWords: RuleKindInWords<'bearing'> = {
  heading: 'direction',
  asked: 'a direction',
  said: ({ point, centre }, name) => `the direction of ${name(point)} from ${name(centre)}`,
  seen: ({ centre, reference }, _, name) =>
    `about ${name(centre)}${reference === undefined ? '' : `, from ${name(reference)}`}`,
};
