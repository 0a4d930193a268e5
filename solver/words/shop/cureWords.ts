/** What to do about a hole off its place, in sentences with the numbers that do it. */
import type { Cure } from '../../made/index.ts';
import { type Sentences, sentenceOf } from '../saying.ts';
import type { Speaker } from '../speaker.ts';
import { shiftSays } from './shiftWords.ts';

const CURES: Sentences<Cure> = {
  leave: ({ towards }, { length }) => `Off by ${length(towards.amount)}: within what marking out gives. Leave it.`,
  ream: ({ diameter, bushTo, towards }, speaker) =>
    `Draw it over by ${shiftSays(towards, speaker)}: the hole cleans up at Ø ${speaker.length(diameter)} or more; bush it back to Ø ${speaker.length(bushTo)}.`,
  bush: ({ bush: { outer, bore, towards, shim } }, speaker) => {
    const { length } = speaker;
    return `Eccentric bush in the hole opened where it stands: Ø ${length(outer)} outside, bore Ø ${length(bore)} set off ${shiftSays(towards, speaker)}. In a three-jaw chuck pack one jaw by ${length(shim.narrow)} (narrow jaws) or ${length(shim.flat)} (flat jaws).`;
  },
  plug: ({ towards, onlyRoom }, speaker) => {
    const tight =
      onlyRoom === undefined
        ? ''
        : `There is room for Ø ${speaker.length(onlyRoom)} only, too little to draw it over or bush it. `;
    return `${tight}Plug it and drill afresh ${shiftSays(towards, speaker)} from where it stands. Pressing and soldering: eye protection, ventilation, and what your local rules ask.`;
  },
};

/** One cure of a hole that stands off its place. */
export function holeCureSays(cure: Cure, speaker: Speaker): string {
  return sentenceOf(CURES, cure, speaker);
}
