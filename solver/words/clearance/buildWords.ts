/** Why parts cannot be made or put together as drawn, as sentences; and the line that heads what is exported. */
import type { Buildable, FindingCause } from '../../clearance/index.ts';
import { asSentence, counted, listed } from '../lists.ts';
import type { Sentences } from '../saying.ts';
import { pieceWords } from './pieces.ts';

type BuildKind =
  | 'arborInRoots'
  | 'arborInBore'
  | 'arborInPipe'
  | 'bodyInHole'
  | 'notReached'
  | 'bearingNotReached'
  | 'pivotThin'
  | 'rimThin'
  | 'postShort'
  | 'postLong'
  | 'holeTight'
  | 'noContact'
  | 'outsideCase'
  | 'plateInWall'
  | 'noBearing'
  | 'noEndShake';

/** A sentence for each cause that keeps a movement from being built. */
export const BUILD_SAYS: Sentences<FindingCause & { readonly kind: BuildKind }> = {
  arborInRoots: ({ arbor, wheel, diameter, roots }, { name, length }) =>
    asSentence(
      `${name(arbor)}, Ø ${length(diameter)}, is as thick as the roots of ${name(wheel)}, Ø ${length(roots)}, or thicker: no metal is left under its teeth.`,
    ),
  arborInBore: ({ arbor, wheel, diameter, bore }, { name, length }) =>
    asSentence(
      `${name(arbor)}, Ø ${length(diameter)}, does not go into the bore of ${name(wheel)}, Ø ${length(bore)}.`,
    ),
  arborInPipe: ({ arbor, pipe, diameter, bore }, { name, length }) =>
    asSentence(`${name(arbor)}, Ø ${length(diameter)}, does not go into ${name(pipe)}, bored Ø ${length(bore)}.`),
  bodyInHole: ({ arbor, plate, diameter, bore }, { name, length }) =>
    asSentence(
      `${name(arbor)} is Ø ${length(diameter)} on both sides of ${name(plate)} and its hole there Ø ${length(bore)}: it cannot be put in.`,
    ),
  notReached: ({ arbor, piece, short }, speaker) =>
    asSentence(`${speaker.name(arbor)} does not reach ${pieceWords(piece, speaker)}: ${speaker.length(short)} short.`),
  bearingNotReached: ({ arbor, plate, short }, { name, length }) =>
    asSentence(`${name(arbor)} does not reach its bearing in ${name(plate)}: ${length(short)} short.`),
  pivotThin: ({ arbor, pivot, least }, { name, length }) =>
    asSentence(
      `a pivot of ${name(arbor)} is ${length(pivot)} thick; for its length and its arbor it wants ${length(least)}.`,
    ),
  rimThin: ({ wheel, rim, teeth }, { name, length }) =>
    asSentence(`the rim of ${name(wheel)} is ${length(rim)} thick and its teeth ${length(teeth)} deep.`),
  postShort: ({ post, plates, length, apart }, speaker) =>
    asSentence(
      `${speaker.name(post)} is ${speaker.length(length)} long and ${listed(plates.map(speaker.name))} stand ${speaker.length(apart)} apart: it does not reach from one to the other.`,
    ),
  postLong: ({ post, plates, length, apart }, speaker) =>
    asSentence(
      `${speaker.name(post)} is ${speaker.length(length)} long and ${listed(plates.map(speaker.name))} stand ${speaker.length(apart)} apart: it stands in the metal of a plate.`,
    ),
  holeTight: ({ point, plate, diameter, hole }, { name, length }) =>
    asSentence(
      `${name(point)}, Ø ${length(diameter)} there, goes through ${name(plate)}, whose hole is Ø ${length(hole)}.`,
    ),
  noContact: ({ post, wall, how, gap, allowance }, { name, length }) =>
    asSentence(
      gap > 0
        ? `${name(post)} is ${how} to ${name(wall)} and stands ${length(gap)} from it; ${length(allowance)} may be left between.`
        : `${name(post)} is ${how} to ${name(wall)} and stands ${length(-gap)} in its metal.`,
    ),
  outsideCase: ({ piece, wall }, speaker) =>
    asSentence(`${pieceWords(piece, speaker)} stands outside ${speaker.name(wall)}.`),
  plateInWall: ({ plate, wall, play }, { name, length }) =>
    asSentence(
      play < 0
        ? `${name(plate)} does not go into ${name(wall)}: too large by ${length(-play)}.`
        : `${name(plate)} has ${length(play)} of play in ${name(wall)}: it does not go in without force.`,
    ),
  noBearing: ({ arbor }, { name }) => asSentence(`${name(arbor)} has no bearing: nothing says what it runs in.`),
  noEndShake: ({ arbor }, { name }) => asSentence(`${name(arbor)} has no end shake: it is pinched between its plates.`),
};

/** "Buildable as drawn.", or how much is against it. */
export function buildableSays({ stops, missing, unsettled }: Buildable): string {
  const against = [
    ...(stops.length > 0 ? [counted(stops.length, 'fault')] : []),
    ...(missing.length > 0 ? [`${missing.length} missing`] : []),
    ...(unsettled > 0 ? [`${counted(unsettled, 'place')} not settled`] : []),
  ];
  return against.length === 0 ? 'Buildable as drawn.' : `Not buildable as drawn: ${listed(against)}.`;
}

/** Most faults that head a file: more are for the check to tell. */
const MOST_TOLD = 12;

/** The list as it heads files: its line, then what is against it. */
export function buildableList(
  list: Buildable,
  says: (finding: Buildable['stops'][number]) => string,
): readonly string[] {
  const against = [...list.stops, ...list.missing];
  const more = against.length - MOST_TOLD;
  return [
    buildableSays(list),
    ...against.slice(0, MOST_TOLD).map(says),
    ...(more > 0 ? [`And ${more} more: the check tells them.`] : []),
  ];
}
