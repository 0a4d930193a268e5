/** What a search for plantings found, how far it is, and why there are no safe places. */
import type { FindPlantingProgress, NoPlanting, PlantingAnswer } from '../../clearance/findPlanting/index.ts';
import type { NoSafePlace } from '../../clearance/safe/index.ts';
import { counted } from '../lists.ts';
import { disagreementSays } from '../planting/disagreementWords.ts';
import { type Sentences, sentenceOf } from '../saying.ts';
import type { Speaker } from '../speaker.ts';

/** What is needed of an answer to say how good it is. */
type Answer = Pick<PlantingAnswer, 'surplus' | 'gapsLeft'>;

/** How a search stands so far. */
export function searchingSays({ best }: Pick<FindPlantingProgress, 'best'>, { length }: Speaker): string {
  return best >= 0 ? `every gap kept, ${length(best)} to spare` : 'some gaps are too small yet';
}

/** One planting that was found: whether it keeps every gap, and the tightest. */
export function foundPlantingSays({ surplus, gapsLeft }: Answer, { length }: Speaker): string {
  if (gapsLeft === 0) return `Every gap is kept; the tightest pair has ${length(surplus)} more than wanted.`;
  const are = gapsLeft === 1 ? 'is' : 'are';
  return `${counted(gapsLeft, 'gap')} ${are} too small yet, by up to ${length(-surplus)}.`;
}

/** How many plantings were found, and how many keep every gap. */
export function plantingsSay(answers: readonly Answer[], tries: number): string {
  const met = answers.filter(({ gapsLeft }) => gapsLeft === 0).length;
  const keep = met === answers.length ? 'all keep' : `${met} ${met === 1 ? 'keeps' : 'keep'}`;
  return `${counted(answers.length, 'planting')} from ${counted(tries, 'try', 'tries')}; ${keep} every gap.`;
}

const NONE: Sentences<NoPlanting> = {
  nothingLoose: () =>
    'Nothing is loose: leave out the rules that need not hold, such as directions and radii, and search again.',
  allHeld: () => 'All that is loose is held still: nothing is left to move.',
  disagree: ({ disagreement }, speaker) =>
    `Rules disagree; settle that first. ${disagreementSays(disagreement, speaker)}`,
  nonePlanted: ({ tries }) => `None of ${counted(tries, 'try', 'tries')} could be planted.`,
};

/** Why no planting was found. */
export function noPlantingSays(why: NoPlanting, speaker: Speaker): string {
  return sentenceOf(NONE, why, speaker);
}

const NOWHERE: Sentences<NoSafePlace> = {
  settled: () => 'It is not loose by itself: leave out a rule that settles it, or move what it is placed from.',
  curve: () => 'Nowhere on its curve is everything clear.',
  circle: () => 'Nowhere on its circle is everything clear.',
  case: () => 'Nowhere in the case is everything clear.',
};

/** Why a point has no safe place. */
export function noSafePlaceSays(why: NoSafePlace, speaker: Speaker): string {
  return sentenceOf(NOWHERE, why, speaker);
}
