/** On the centre line in words. */
import type { RuleKindInWords } from './kind.ts';

/** "On the centre line" on slips and in sentences. */
export const onCentreLineInWords: RuleKindInWords<'onCentreLine'> = {
  heading: 'on the centre line',
  asked: 'a place on the centre line',
  said: ({ point }, name) => `${name(point)} on the centre line`,
  seen: () => 'of the movement',
};
