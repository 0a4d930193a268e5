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
  disagreement: () => 'The rules contradict each other: leave one of them out, or read its measure again.',
  turning: () =>
    'The counts and couplings decide this, and no single change of one settles it without another fault. Look the train over in Counts, or add what is named.',
  sizes: () =>
    'Neither wheel can be cut in the size of the other without another fault: look at the pair in its depth view, and choose one cutter for both.',
  teeth: () =>
    'No figure of its teeth that was tried makes them sound without another fault: look at the wheel under Cutting, and change its count, its size or its form.',
  apartInHeight: () =>
    'Neither wheel can be moved to the other without another fault: raise or lower both with what stands on their arbors.',
  underShake: () =>
    'No distance and no closer bearing that was tried cures it without another fault: look at the pair in its depth view, and change the size or the distance of both.',
  stackShort: () =>
    'No hub or collar that could be shortened gives the end shake back. Move a wheel along its arbor, make one thinner, or set the plates farther apart.',
  stackUsedUp: () =>
    'The room between the plates allows no greater end shake. Turn the lengths more closely, or make one of them shorter and state what it then is.',
  pipeUnstopped: () =>
    'No collar finds room on the pipe or on what it rides on: make one of the two longer, or lead its end to a shoulder.',
  pipeShort: () =>
    'What stands on both sides leaves the pipe no room: shorten its hub or collar, or move what it stands against.',
  pipeLoose: () =>
    'No collar could be put on to fill the room: lengthen the pipe or its hub, or state the end shake that it has.',
  pipeUsedUp: () =>
    'A greater end shake of the pipe would hold: turn its lengths more closely, or shorten its hub or collar a little.',
  pivotThick: () => 'Turn the pivot and its hole smaller, or make the arbor thicker.',
  pivotThin: () => 'Make the pivot thicker with its hole, or shorter where the plate allows it.',
  breaksOut: () =>
    'A hole wants metal around it: move the point, take a smaller bush, or give the plate another outline.',
  nearEdge: () =>
    'The metal beside the hole may break or bulge in the reaming: move the point inwards, take a smaller hole, or give the plate a wider outline there.',
  holesMeet: () => 'Two holes want metal between them: move one of the points, or take smaller bushes.',
  openingOutside: () => 'Move or shrink the opening so that it lies within its plate, or name the plate that it is in.',
  openingAcross: () => 'Move or shrink the opening so that it lies within its plate.',
  openingsCross: () => 'Draw one outline round both openings, or move one of them.',
  arborInRoots: () =>
    'Make the arbor thinner, at least where the teeth are; give the wheel more teeth or a larger module; or bore it and state its bore.',
  arborInBore: () => 'Open the bore, or make the arbor thinner where the wheel sits.',
  arborInPipe: () => 'Open the bore of the pipe and its bushes, or make what it rides on thinner.',
  bodyInHole: () =>
    'An arbor goes into its hole from one side: end it in the plate, or make hole and pivot as thick as what goes on beyond.',
  notReached: () => 'Make the arbor longer, or move what is to sit on it.',
  bearingNotReached: () => 'Make the arbor longer, or leave its heights blank: it then reaches its bearings.',
  rimThin: () => 'Leave a wider rim when the arms are cut.',
  postShort: () =>
    'Make the post as long as the plates stand apart, or leave its heights blank: it then reaches from plate to plate.',
  postLong: () =>
    'Shorten the post to the distance of the plates, or state a fixing hole that takes its whole thickness.',
  holeTight: () =>
    'Give the pipe its bearing in the plate and let the arbor run in the pipe, end it before the plate, or cut an opening there.',
  noContact: () => 'Move the post up to its wall, give it a longer foot, or take back that it is fixed there.',
  outsideCase: () => 'Move it inside, or draw the wall round it.',
  plateInWall: () => 'Make the plate smaller or the wall wider, with a little play all round.',
  noBearing: () => 'Say what it runs in: a hole or a bush in a plate, or a stud that it stands on.',
  noEndShake: () => 'State an end shake that its stack leaves: some tenths of a millimetre are usual.',
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
