/** Findings as sentences. What the table of findings shows, gap and limit, is what the sentence says. */
import type { Finding, FindingCause } from '../../clearance/index.ts';
import { asSentence, counted, listed } from '../lists.ts';
import { disagreementSays } from '../planting/disagreementWords.ts';
import { type Sentences, sentenceOf } from '../saying.ts';
import type { Speaker } from '../speaker.ts';
import { mismatchSays } from '../teeth/pairWords.ts';
import { teethSay } from '../teeth/toothWords.ts';
import { turningProblemSays } from '../train/turningWords.ts';
import { BUILD_SAYS } from './buildWords.ts';
import { depthFaultSays } from './depthFaultWords.ts';
import { namesOfParts, pieceWords } from './pieces.ts';

/** A cause together with the finding that it explains. */
type Told = FindingCause & { readonly finding: Finding };
/** The causes of one kind with their finding. */
type ToldOf<K extends Told['kind']> = Told & { readonly kind: K };

/** Under which reading of the gap it falls short. */
const UNDER: Readonly<Record<NonNullable<Finding['value']>, string>> = {
  asPlanted: '',
  withShake: ' with shake',
  withPlusMinus: ' with shake and the ± of the planting',
};

const SAYS: Sentences<Told> = {
  gap: gapSays,
  disagreement: ({ disagreement }, speaker) => disagreementSays(disagreement, speaker),
  turning: ({ problem }, speaker) => turningProblemSays(problem, speaker),
  ringMisses: ringMissesSays,
  ringSet: ({ ring, wheel, arbor, turn }, speaker) =>
    `The ring of ${namesOfParts(ring, speaker)} closes when ${speaker.name(wheel)} is set on ${speaker.name(arbor)} ${speaker.angle(Math.abs(turn), 3)} ${turn > 0 ? 'anticlockwise' : 'clockwise'} of its place (tooth over tooth, where no phase is given).`,
  pivotThick: ({ arbor, pivot, diameter }, { name, length }) =>
    `A pivot of ${name(arbor)} is ${length(pivot)} thick and its arbor ${length(diameter)}: no shoulder is left.`,
  breaksOut: ({ point, plate, finding }, { name, length }) =>
    `The hole of ${name(point)} breaks out of ${name(plate)} by ${length(-gapOf(finding))}.`,
  nearEdge: ({ point, plate, finding }, { name, length }) =>
    `The hole of ${name(point)} leaves ${length(gapOf(finding))} of metal to the edge of ${name(plate)}, wanted ${length(wantedOf(finding))}.`,
  holesMeet: ({ points, plate, finding }, speaker) =>
    `The holes of ${namesOfParts(points, speaker)} run into each other in ${speaker.name(plate)} by ${speaker.length(-gapOf(finding))}.`,
  openingOutside: ({ opening, plate }, { name }) =>
    asSentence(`${name(opening)} is outside ${name(plate)}: there is nothing to cut.`),
  openingAcross: ({ opening, plate }, { name }) =>
    asSentence(
      `${name(opening)} crosses the edge of ${name(plate)}: an opening lies within its plate, and a notch may cross its edge.`,
    ),
  openingsCross: ({ openings, plate }, speaker) =>
    asSentence(
      `${namesOfParts(openings, speaker)} cross each other in ${speaker.name(plate)}: one outline round both is wanted.`,
    ),
  sizes: ({ calculated }, speaker) => mismatchSays(calculated.why, speaker),
  teeth: ({ told }, speaker) => teethSay(told, speaker),
  apartInHeight: ({ wheels, finding }, speaker) =>
    asSentence(`${namesOfParts(wheels, speaker)} do not meet in height: ${speaker.length(gapOf(finding))} apart.`),
  underShake: ({ wheels, fault }, speaker) =>
    asSentence(`${namesOfParts(wheels, speaker)} ${depthFaultSays(fault, speaker)}`),
  stackShort: ({ arbor, finding }, { name, length }) =>
    `What stands on ${name(arbor)} leaves ${length(gapOf(finding))} between the plates, less than its end shake of ${length(wantedOf(finding))}.`,
  stackUsedUp: ({ arbor, lengths, likely, worst, finding }, { name, length }) =>
    `The end shake of ${name(arbor)}, ${length(wantedOf(finding))}, can be used up by the ${counted(lengths, 'length')} of its stack: likely down to ${length(likely)}, at worst ${length(worst)}.`,
  pipeUnstopped: ({ arbor, down, up, finding }, { name, length }) => {
    const sides = listed([...(down ? ['downwards'] : []), ...(up ? ['upwards'] : [])], 'or');
    return `Nothing stops ${name(arbor)} ${sides}, so its end shake of ${length(wantedOf(finding))} is not kept.`;
  },
  pipeShort: ({ arbor, between, finding }, speaker) =>
    asSentence(
      `${speaker.name(arbor)} has ${speaker.length(gapOf(finding))} of room ${betweenWords(between, speaker)}, less than its end shake of ${speaker.length(wantedOf(finding))}.`,
    ),
  pipeLoose: ({ arbor, between, finding }, speaker) =>
    asSentence(
      `${speaker.name(arbor)} can move ${speaker.length(gapOf(finding))} up and down ${betweenWords(between, speaker)}, more than its end shake of ${speaker.length(wantedOf(finding))}.`,
    ),
  pipeUsedUp: ({ arbor, between, room, likely, worst }, speaker) =>
    `The end shake of ${speaker.name(arbor)}, ${speaker.length(room)} ${betweenWords(between, speaker)}, can be used up by the errors of their lengths: likely down to ${speaker.length(likely)}, at worst ${speaker.length(worst)}.`,
  ...BUILD_SAYS,
  heldDown: ({ arbor, by }, { name }) => asSentence(`${name(arbor)} cannot be lifted out: ${name(by)} stands over it.`),
};

/** The finding in one or two whole sentences. */
export function findingSays(finding: Finding, speaker: Speaker): string {
  return sentenceOf<Told>(SAYS, { ...finding.cause, finding }, speaker);
}

/** Findings that came, went or changed their gap, a sentence each. */
export function findingChangesSay(
  {
    findingsNew,
    findingsGone,
    gaps,
  }: {
    readonly findingsNew: readonly Finding[];
    readonly findingsGone: readonly Finding[];
    readonly gaps: readonly { readonly finding: Finding; readonly before: number }[];
  },
  speaker: Speaker,
): readonly string[] {
  return [
    ...findingsNew.map((finding) => `New: ${findingSays(finding, speaker)}`),
    ...findingsGone.map((finding) => `Gone: ${findingSays(finding, speaker)}`),
    ...gaps.map(({ finding, before }) => `Was ${speaker.length(before)}: ${findingSays(finding, speaker)}`),
  ];
}

const gapOf = ({ gap = 0 }: Finding): number => gap;
const wantedOf = ({ wanted = 0 }: Finding): number => wanted;

function betweenWords(pieces: ToldOf<'pipeShort'>['between'], speaker: Speaker): string {
  return `between ${listed(pieces.map((piece) => pieceWords(piece, speaker)))}`;
}

function gapSays({ pieces, direction, finding }: ToldOf<'gap'>, speaker: Speaker): string {
  const { gap, wanted } = { gap: gapOf(finding), wanted: wantedOf(finding) };
  const under = UNDER[finding.value ?? 'asPlanted'];
  const names = asSentence(listed(pieces.map((piece) => pieceWords(piece, speaker))));
  if (finding.kind !== 'fouls') {
    const where = direction === 'height' ? ' in height' : '';
    return `${names}: gap ${speaker.length(gap)}${where}${under}, wanted ${speaker.length(wanted)}.`;
  }
  const { wayOut } = finding;
  const out = wayOut === undefined ? '' : `; they are clear of each other after ${speaker.length(wayOut)}`;
  if (direction === 'plan') return `${names} foul by ${speaker.length(-gap)}${under}${out}.`;
  return `${names} stand in each other: their levels overlap by ${speaker.length(-gap)}${under}${out}.`;
}

function ringMissesSays({ ring, missTeeth, closing }: ToldOf<'ringMisses'>, speaker: Speaker): string {
  const cannot = `The ring of ${namesOfParts(ring, speaker)} cannot be put together: with all other teeth in mesh the last depth misses by ${speaker.number(missTeeth, 3)} of a tooth.`;
  if (!closing) {
    return `${cannot} Leave out the rule that settles one of its arbors, or change the counts of one of its wheels by one tooth.`;
  }
  const { name, length, figure } = speaker;
  const moves = closing.map(
    ({ arbor, to, distance }) => `${name(arbor)} by ${length(distance)} to (${figure(to.x)}, ${figure(to.y)})`,
  );
  return `${cannot} It closes when ${listed(moves)} ${moves.length === 1 ? 'moves' : 'move'}.`;
}
