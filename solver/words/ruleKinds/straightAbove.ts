/** Straight above in words. */
import type { RuleKindInWords } from './kind.ts';

/** "Straight above" on slips and in sentences. */
export const straightAboveInWords: RuleKindInWords<'straightAbove'> = {
  heading: 'straight above',
  asked: 'a place straight above or below another',
  said: ({ point, of }, name) => `${name(point)} straight above or below ${name(of)}`,
  seen: ({ point, of }, from, name) => `or below ${name(point === from ? of : point)}`,
};
