/** The order of taking apart, and what an arbor's stack stands between. */
import type { AssemblyOrder, NoStack, Piece, WallContact } from '../../clearance/index.ts';
import type { SafeStretch } from '../../clearance/safe/index.ts';
import { asSentence, listed } from '../lists.ts';
import { type Sentences, sentenceOf } from '../saying.ts';
import type { Speaker } from '../speaker.ts';
import { namesOfParts, pieceWords } from './pieces.ts';

/** A sentence for each group that comes out together, and for each arbor that others hold down. */
export function assemblySays({ groups, heldDown }: AssemblyOrder, speaker: Speaker): readonly string[] {
  const together = groups
    .filter((group) => group.length > 1)
    .map((group) => asSentence(`${namesOfParts(group, speaker)} come out together: each stands over another.`));
  const held = heldDown
    .filter(({ by }) => by.length > 0)
    .map(({ arbor, by }) => {
      const are = by.length > 1 ? 'are' : 'is';
      return asSentence(`${speaker.name(arbor)} cannot be lifted out while ${namesOfParts(by, speaker)} ${are} in.`);
    });
  return [...together, ...held];
}

const NO_STACK: Sentences<NoStack> = {
  unknown: () => 'No arbor of that name.',
  notBetweenPlates: ({ arbor }, { name }) =>
    asSentence(`${name(arbor)} does not run between two plates, so no distance bounds its stack.`),
  fixed: ({ arbor, on }, { name }) =>
    asSentence(`${name(arbor)} is fixed on ${name(on)} and has no end shake of its own.`),
};

/** Why an arbor has no stack. */
export function noStackSays(why: NoStack, speaker: Speaker): string {
  return sentenceOf(NO_STACK, why, speaker);
}

/** "Back plate and Collar on Third": what a stack stands between. */
export function piecesWords(pieces: readonly Piece[], speaker: Speaker): string {
  return asSentence(listed(pieces.map((piece) => pieceWords(piece, speaker))));
}

/** How the drawing stands, where end shakes are told. */
export const MID_SHAKE =
  'Every arbor is drawn at the middle of its end shake: it goes half of it up and half of it down.';

/** A support against its wall: its gap, the camber of its foot, and where along the wall it may slide. */
export function contactSays(
  { post, wall, how, gap, camber }: WallContact,
  stretches: readonly SafeStretch[] | undefined,
  { name, length, angle }: Speaker,
): string {
  const foot = camber
    ? ` Its foot is cut to a radius of ${length(camber.radius)}: an arc ${length(camber.height)} high over ${length(camber.width)}.`
    : '';
  const safe = (stretches ?? []).map(
    (each) => `${angle(each.start)} to ${angle(each.start + each.sweep)} (${length(each.length)} of wall)`,
  );
  const where =
    stretches === undefined
      ? ''
      : safe.length === 0
        ? ' Nowhere along it is everything clear.'
        : ` Along it everything is clear from ${listed(safe)}.`;
  return asSentence(`${name(post)} is ${how} to ${name(wall)}, ${length(gap)} from it.${foot}${where}`);
}
