/** How a depth fails with the shake of its arbors, as the end of a sentence that begins with the pair. */
import type { DepthCause } from '../../clearance/index.ts';
import { type Sentences, sentenceOf } from '../saying.ts';
import type { Speaker } from '../speaker.ts';
import { pairFaultSays } from '../teeth/pairWords.ts';

const SAYS: Sentences<DepthCause> = {
  noMesh: ({ window }, speaker) => `do not mesh: ${pairFaultSays(window.why, speaker)}`,
  tooNear: ({ by, tooNear, play, runOut }, { length }) =>
    `${by === 'bottoming' ? 'bottom' : 'bind'}: ${length(tooNear)} too near${runOut ? ' where their run-out is at its worst' : ''}, and their bearings give way by ${length(play)} only.`,
  losesContact: ({ tooFar }, { length }) => `lose contact: ${length(tooFar)} too far apart.`,
  canLoseContact: ({ tooFar }, { length }) => `can lose contact with shake: ${length(tooFar)} too far apart then.`,
  bottomsAsPlanted: ({ tooNear }, { length }) =>
    `bottom as planted: ${length(tooNear)} too near, until their bearings give way.`,
  uneven: ({ distance, evenTo }, { length }) =>
    `do not run evenly: ${length(distance)} apart, flanks hand over evenly up to ${length(evenTo)}.`,
};

/** "bind: 0.050 mm too near, and their bearings give way by 0.020 mm only." */
export function depthFaultSays(fault: DepthCause, speaker: Speaker): string {
  return sentenceOf(SAYS, fault, speaker);
}
