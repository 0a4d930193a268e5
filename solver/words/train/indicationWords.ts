/** What a hand, ring or ball shows against what it should, or why it shows nothing. */
import { type IndicationTurning, type NothingShown, periodErrorOf, type TurningState } from '../../train/index.ts';
import { fractionText } from '../../train/turning/rational.ts';
import { asSentence } from '../lists.ts';
import { type Sentences, sentenceOf } from '../saying.ts';
import type { Speaker } from '../speaker.ts';
import { periodErrorSays, periodSays } from './periodWords.ts';

const REASONS = {
  turns: 'it turns',
  locked: 'it is locked',
  notDriven: 'it is not driven',
  open: 'a carrier leaves its rate open',
  still: 'it stands still',
} as const satisfies Record<TurningState, string>;

const NOTHING: Sentences<NothingShown> = {
  arborMissing: () => 'its arbor is not in the movement',
  nothingDrives: () => 'nothing drives the movement, so it shows nothing',
  periodAndRatio: () => 'both a period and a ratio are given; keep one of the two',
  neither: () => 'neither a period nor a ratio is given; add one of the two',
  badPeriod: ({ value }, { plain }) =>
    `the period ${Number.isFinite(value) ? plain(value) : 'that is given'} must be more than 0`,
  badRatio: ({ ratio }) => `the ratio ${ratio} must be a number other than 0, such as 27/2`,
  arborStands: ({ arbor, state, wantedPeriod }, { name }) =>
    `${name(arbor)} does not turn (${REASONS[state]}); wanted ${periodSays(wantedPeriod)}`,
};

/** Why a hand shows nothing, as the end of a sentence. */
export function nothingShownSays(nothing: NothingShown, speaker: Speaker): string {
  return sentenceOf(NOTHING, nothing, speaker);
}

/** How far a hand is out and which way it turns: "+9.32 ppm: loses 0.806 s a day, one day in 294 years; clockwise". */
export function shownErrorSays(shown: IndicationTurning, speaker: Speaker): string {
  if (!shown.error) return shown.nothing ? nothingShownSays(shown.nothing, speaker) : '';
  const wrong = shown.senseIsWrong ? `, the wrong way: ${shown.wantedSense} is wanted` : '';
  const out = shown.withinTolerance === false ? '; more than it may be off' : '';
  return `${periodErrorSays(periodErrorOf(shown.error), speaker)}; ${shown.sense}${wrong}${out}`;
}

/** What a hand shows in a whole sentence, with ten digits of both periods. */
export function indicationSays(shown: IndicationTurning, speaker: Speaker): string {
  const name = asSentence(speaker.indication(shown.id));
  const { achievedTurns: achieved, achievedPeriod, wantedPeriod, error, nothing } = shown;
  if (!achieved || !achievedPeriod || !wantedPeriod || !error) {
    return `${name}: ${nothing ? nothingShownSays(nothing, speaker) : 'it shows nothing'}.`;
  }
  const digits = achieved.d === 1n ? '' : ` = ${speaker.exact(achieved)}`;
  const wrong = shown.senseIsWrong ? `, which is the wrong way: wanted ${shown.wantedSense}` : '';
  return `${name}: ${periodSays(achievedPeriod)} (${fractionText(achieved)}${digits} turns for one of the drive), wanted ${periodSays(wantedPeriod)}; ${periodErrorSays(periodErrorOf(error), speaker)}; turns ${shown.sense}${wrong}.`;
}
