/** What to try where nothing simple cures a finding, as whole sentences. */
import type { Advice } from '../../clearance/index.ts';
import { type Sentences, sentenceOf } from '../saying.ts';
import type { Speaker } from '../speaker.ts';
import { namesOfParts } from './pieces.ts';

const SAYS: Sentences<Advice> = {
  contested: () =>
    'Rules disagree about where its parts stand, so nothing that would clear them there means anything yet: settle what disagrees first.',
  gap: () =>
    'No single change that was tried clears it without making something else too close. Try leaving out a rule that settles one of the two and sliding it, another crossing, a smaller module, or Find a planting.',
  turning: () =>
    'The counts and couplings decide this, and no single change of one settles it without another fault. Look the train over in Counts, or add what is named.',
  stack: () =>
    'No hub or collar that could be shortened or added gives the end shake back. Move a wheel along its arbor, make one thinner, or set the plates farther apart.',
  bearing: () =>
    'A hole wants metal around it: move the arbor, take a smaller bush, or give the plate another outline.',
  case: () => 'Move or shrink the outline so that it lies within its plate, or draw one outline round both openings.',
  planting: () => 'The rules contradict each other: leave one of them out, or read its measure again.',
  pair: () =>
    'Neither wheel can be changed alone without another fault: look at the pair in its depth view, and change the size, the height or the distance of both.',
  ring: ({ nearest }, { name, number }) => {
    const counts = nearest
      ? `The nearest count of one wheel is ${nearest.teeth} teeth for ${name(nearest.wheel)}: its last depth misses by ${number(nearest.miss, 3)} of a tooth then.`
      : 'No count of one wheel was found that closes it.';
    return `${counts} Leave out a rule that settles one of its arbors, so that it can move to where the teeth meet, or take one depth out of the ring.`;
  },
  assembly: ({ before }, speaker) => {
    const first = before.length > 0 ? ` after ${namesOfParts(before, speaker)}` : '';
    return `Make what stands over it removable: a head that screws off, or a part of the frame that comes away. It is then lifted out${first}.`;
  },
};

/** Why there is no cure, and what to try. */
export function adviceSays(advice: Advice, speaker: Speaker): string {
  return sentenceOf(SAYS, advice, speaker);
}
