/** A depth in words. */
import { arborOfWheel } from '../../marking/index.ts';
import { type RuleKindInWords, standsOn } from './kind.ts';

/** "A depth" on slips and in sentences. */
export const depthInWords: RuleKindInWords<'depth'> = {
  heading: 'depth',
  asked: 'a depth',
  noun: 'depth',
  said: ({ wheels }, name, movement) => {
    const [a, b] = wheels.map((wheel) => name(arborOfWheel(movement, wheel) ?? wheel));
    return `the depth of ${a} and ${b}`;
  },
  seen: ({ wheels: [a, b] }, from, name, movement) => `with ${name(standsOn(movement, a, from) ? b : a)}`,
  finer: ({ wheels }, name) => `the depth of ${name(wheels[0])} and ${name(wheels[1])}`,
};
