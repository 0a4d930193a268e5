/** What a maker should know of the outline of a wheel: its teeth, its arms, and what the tool leaves. */
import type { NoOpenings, OutlineDoubt, WheelLoop } from '../../teeth/outlines/index.ts';
import { asSentence, counted } from '../lists.ts';
import { type Sentences, sentenceOf } from '../saying.ts';
import type { Speaker } from '../speaker.ts';
import { diameterSays } from './sizeWords.ts';
import { TOOTH_DOUBTS } from './toothWords.ts';

const NO_OPENINGS: Sentences<NoOpenings> = {
  tooTight: ({ arms }, speaker) =>
    `${counted(arms.count, 'arm')} ${speaker.length(arms.width)} wide with corners of ${speaker.length(arms.fillet)} leave no openings between a hub of ${diameterSays(2 * arms.hubRadius, speaker)} and a rim of ${diameterSays(2 * arms.rimRadius, speaker)} inside: fewer or narrower arms, or a smaller corner.`,
  armsAsBroadAsHub: ({ arms }, speaker) =>
    `Arms ${speaker.length(arms.width)} wide are as broad as the hub they stand on (${diameterSays(2 * arms.hubRadius, speaker)}): make the hub larger or the arms narrower.`,
  noRoom: ({ arms }, speaker) =>
    `Between the hub (${diameterSays(2 * arms.hubRadius, speaker)}) and the inside of the rim (${diameterSays(2 * arms.rimRadius, speaker)}) there is no room for openings with corners of ${speaker.length(arms.fillet)}.`,
};

/** Why a wheel cannot be crossed out as its arms are stated. */
export function noOpeningsSay(why: NoOpenings, speaker: Speaker): string {
  return sentenceOf(NO_OPENINGS, why, speaker);
}

/** A square length in the document's unit: what is left standing in a corner. */
function areaSays(mm2: number, { display, plain }: Speaker): string {
  return display.unit === 'inch' ? `${plain(mm2 / 25.4 ** 2, 3)} in²` : `${plain(mm2, 3)} mm²`;
}

const LOOPS: Readonly<Record<WheelLoop['role'], string>> = {
  teeth: 'teeth',
  body: 'body',
  opening: 'opening',
  bore: 'bore',
  pin: 'holes of the trundles',
};

const OUTLINES: Sentences<OutlineDoubt> = {
  ...TOOTH_DOUBTS,
  cornersOfCutter: ({ wheel, stated, drawn }, { name, length }) =>
    `${name(wheel)}: inner corners of ${length(stated)} are smaller than the cutter; they are drawn ${length(drawn)}.`,
  thinRim: ({ wheel, rim, least }, { name, length }) =>
    `${name(wheel)}: a rim of ${length(rim)} is thinner than the teeth are deep (${length(least)}): the usual least rim.`,
  noOpenings: ({ wheel, why }, speaker) => `${speaker.name(wheel)}: ${noOpeningsSay(why, speaker)}`,
  closedUp: ({ wheel, offset, role }, { name, length }) =>
    `${name(wheel)}: an offset of ${length(offset)} closes the ${LOOPS[role]} altogether.`,
  rootsNotReached: ({ wheel, offset, left }, speaker) =>
    `${speaker.name(wheel)}: a tool of radius ${speaker.length(offset)} does not reach into the roots; ${areaSays(left, speaker)} stays standing in each space.`,
};

/** One doubt about an outline, as a sentence. */
export function outlineDoubtSays(doubt: OutlineDoubt, speaker: Speaker): string {
  return asSentence(sentenceOf(OUTLINES, doubt, speaker));
}
