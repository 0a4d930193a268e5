/** Mirrored in words. */
import type { RuleKindInWords } from './kind.ts';

/** "Mirrored" on slips and in sentences. */
export const mirroredInWords: RuleKindInWords<'mirrored'> = {
  heading: 'mirrored',
  asked: 'a mirror image about the centre line',
  said: ({ point, of }, name) => `${name(point)} mirrored from ${name(of)} about the centre line`,
  seen: ({ point, of }, from, name) => `from ${name(point === from ? of : point)} about the centre line`,
};
