/** In line in words. */
import type { RuleKindInWords } from './kind.ts';

/** "In line" on slips and in sentences. */
export const inLineInWords: RuleKindInWords<'inLine'> = {
  heading: 'in line',
  asked: 'a line through two others',
  said: ({ point, through }, name) => `${name(point)} in line with ${name(through[0])} and ${name(through[1])}`,
  seen: ({ through }, _, name) => `with ${name(through[0])} and ${name(through[1])}`,
};
