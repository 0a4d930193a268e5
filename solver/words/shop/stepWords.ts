/** The words of a marking-out step: whole sentences, lengths in the maker's unit, angles with one more decimal. */
import {
  type CrossingTold,
  type MarkingLocus,
  type MarkingStep,
  PLATE_CENTRE,
  type ResolvedDatum,
  type StepWarning,
  type TwoArcs,
} from '../../marking/index.ts';
import { lengthPlaces } from '../../movement/decimal.ts';
import { asSentence } from '../lists.ts';
import { type Sentences, sentenceOf } from '../saying.ts';
import type { Speaker } from '../speaker.ts';

/** A point on the metal as a sentence names it; the centre of a round plate is no part. */
export function onMetal(id: string, { name }: Speaker): string {
  return id === PLATE_CENTRE || id.endsWith(' edge') ? `the ${id}` : name(id);
}

/** What distances along the base line are measured from. */
function datumName(datum: ResolvedDatum, speaker: Speaker): string {
  if (datum.kind === 'pair') return speaker.name(datum.first);
  return onMetal(datum.kind === 'centre' ? PLATE_CENTRE : 'left edge', speaker);
}

const DATUMS: Sentences<ResolvedDatum> = {
  edges: ({ upright, level }) =>
    `Datum: the ${upright.name} and the ${level.name}. The base line is parallel to the ${level.name} and points right.`,
  centre: () => `Datum: the ${PLATE_CENTRE} and the base line through it, which points right.`,
  pair: ({ first, second }, { name }) => `Datum: ${name(first)}; the base line points from it to ${name(second)}.`,
};

/** What everything is measured from. */
export function datumSays(datum: ResolvedDatum, speaker: Speaker): string {
  return sentenceOf(DATUMS, datum, speaker);
}

/** "turned 54.6683° anticlockwise"; the shorter way round. */
function turnSays(angleDeg: number, { display, number }: Speaker): string {
  const isBack = angleDeg > 180;
  const shown = number(isBack ? 360 - angleDeg : angleDeg, lengthPlaces(display) + 1);
  return `turned ${shown}° ${isBack ? 'clockwise' : 'anticlockwise'}`;
}

/** One setting or line, as a phrase. */
export function locusSays(locus: MarkingLocus, datum: ResolvedDatum, speaker: Speaker): string {
  switch (locus.kind) {
    case 'arc':
      return `arc ${speaker.figure(locus.radius)} from ${onMetal(locus.from, speaker)}`;
    case 'line':
      return `line through ${onMetal(locus.through, speaker)} and ${onMetal(locus.to, speaker)}`;
    case 'ray': {
      const from = locus.reference === undefined ? 'the base line' : `the line to ${onMetal(locus.reference, speaker)}`;
      return `line from ${onMetal(locus.from, speaker)}, ${turnSays(locus.angleDeg, speaker)} from ${from}`;
    }
    case 'offset':
      return offsetSays(locus, datum, speaker);
  }
}

type Offset = Extract<MarkingLocus, { kind: 'offset' }>;

function offsetSays(locus: Offset, datum: ResolvedDatum, speaker: Speaker): string {
  const length = speaker.figure(Math.abs(locus.distance));
  const isNegative = locus.distance < 0;
  if (locus.from !== 'datum') return `${length} ${isNegative ? 'outside' : 'from'} the ${locus.from}`;
  if (locus.along === 'y') return `${length} ${isNegative ? 'below' : 'above'} the base line`;
  return `${length} to the ${isNegative ? 'left' : 'right'} of ${datumName(datum, speaker)}, along the base line`;
}

/** Which crossing is meant, as a phrase. */
export function crossingSays({ side, beside, near }: CrossingTold, speaker: Speaker): string {
  const words = [`the ${side} of the two crossings`];
  if (beside) {
    const { isLeft, from, to } = beside;
    words.push(`${isLeft ? 'left' : 'right'} of the line from ${onMetal(from, speaker)} to ${onMetal(to, speaker)}`);
  }
  if (near !== undefined) words.push(`nearer ${onMetal(near, speaker)}`);
  return words.join(', ');
}

/** A distance that checks the step, as a phrase: "27.200 from Escape". */
export function checkPhrase({ from, distance }: NonNullable<MarkingStep['check']>, speaker: Speaker): string {
  return `${speaker.figure(distance)} from ${onMetal(from, speaker)}`;
}

/** The check, as a sentence. */
export function checkSays(check: NonNullable<MarkingStep['check']>, speaker: Speaker): string {
  return `Check: ${checkPhrase(check, speaker)}.`;
}

/** Two arcs with the crossing that is meant. */
function arcsSay({ loci, crossing }: TwoArcs, datum: ResolvedDatum, speaker: Speaker): string {
  const which = crossing ? ` (${crossingSays(crossing, speaker)})` : '';
  return `${bothSay(loci, datum, speaker)}${which}`;
}

const bothSay = (loci: readonly MarkingLocus[], datum: ResolvedDatum, speaker: Speaker): string =>
  loci.map((locus) => locusSays(locus, datum, speaker)).join(' and ');

const FLAT = 'A flat crossing: the lines run together and the point wanders.';

/** What a warning needs besides itself. */
type Warned = StepWarning & { readonly point: string; readonly datum: ResolvedDatum };

const WARNINGS: Sentences<Warned> = {
  otherDatum: () => 'The datum asked for is not on this plate; another is used.',
  notSettled: ({ isLoose, point }, speaker) => {
    const why = isLoose ? 'it can still move' : 'its rules disagree, or those of a point that it is struck from';
    return `${asSentence(speaker.name(point))} cannot be marked: ${why}. Settle it first.`;
  },
  flatBetterArcs: ({ arcs, angle, datum }, speaker) =>
    `${FLAT} Better: ${arcsSay(arcs, datum, speaker)}, which cross at ${speaker.angle(angle)}.`,
  flatBetterOffsets: ({ loci, datum }, speaker) =>
    `${FLAT} Better: lines at ${bothSay(loci, datum, speaker)}, which cross at 90.0°.`,
  flatNothingBetter: () => `${FLAT} Strike a witness point to one side first, or drill it by coordinates.`,
};

/** One sentence of a step, and what it is about. */
export interface StepSentence {
  readonly about: 'strike' | 'crossing' | 'accuracy' | 'check' | 'otherWay' | 'warning';
  readonly says: string;
}

/** The sentences of a step, without the name of its point. */
export function stepSentences(step: MarkingStep, datum: ResolvedDatum, speaker: Speaker): readonly StepSentence[] {
  const { crossing, check, orElse, warns, point } = step;
  const accuracy = accuracySays(step, speaker);
  return [
    { about: 'strike', says: strikeSays(step, datum, speaker) },
    ...(crossing ? [{ about: 'crossing', says: `Take ${crossingSays(crossing, speaker)}.` } as const] : []),
    ...(accuracy === undefined ? [] : [{ about: 'accuracy', says: accuracy } as const]),
    ...(check ? [{ about: 'check', says: checkSays(check, speaker) } as const] : []),
    ...(orElse
      ? [{ about: 'otherWay', says: `With dividers alone: ${arcsSay(orElse, datum, speaker)}.` } as const]
      : []),
    ...(warns
      ? [{ about: 'warning', says: sentenceOf<Warned>(WARNINGS, { ...warns, point, datum }, speaker) } as const]
      : []),
  ];
}

/** A setting so much out is what makers ask about, mm: a hundredth of a millimetre, a thousandth of an inch. */
const OUT = { mm: 0.01, inch: 0.0254 } as const;
/** The error that a step's `movedByHundredth` is told for, mm. */
const HUNDREDTH = 0.01;

function accuracySays({ kind, crossingAngleDeg, movedByHundredth }: MarkingStep, speaker: Speaker): string | undefined {
  const isSquare = kind === 'offset' || kind === 'datum';
  if (isSquare || crossingAngleDeg === undefined || movedByHundredth === undefined) return undefined;
  const { length, number, display } = speaker;
  const out = OUT[display.unit];
  const moved = (out * movedByHundredth) / HUNDREDTH;
  return `They cross at ${number(crossingAngleDeg, 1)}°; a setting ${length(out)} out moves the point ${length(moved)}.`;
}

/** The whole step, a sentence a line. */
export function stepLines(step: MarkingStep, datum: ResolvedDatum, speaker: Speaker): readonly string[] {
  const [strike, ...rest] = stepSentences(step, datum, speaker).map(({ says }) => says);
  return [`${step.label}: ${strike ?? ''}`, ...rest];
}

/** What is struck, as a sentence. */
function strikeSays(step: MarkingStep, datum: ResolvedDatum, speaker: Speaker): string {
  const both = bothSay(step.loci, datum, speaker);
  switch (step.kind) {
    case 'datum':
      return datumStepSays(step, datum, both, speaker);
    case 'already':
      return 'already on the metal.';
    case 'same':
      return `shares the place of ${onMetal(sharedWith(step), speaker)}: nothing to strike.`;
    case 'unsettled':
      return 'not settled yet: no mark is given.';
    case 'offset':
      return `lines at ${both}.`;
    case 'opposite':
      return `opposite: ${both}.`;
    case 'spacing':
      return `even spacing: ${both}.`;
    case 'derivedArcs':
      return `derived settings: ${both}.`;
    case 'arcs':
    case 'arcAndLine':
    case 'lines':
      return `${both}.`;
  }
}

function datumStepSays(step: MarkingStep, datum: ResolvedDatum, both: string, speaker: Speaker): string {
  const from = datumName(datum, speaker);
  if (step.loci.some((locus) => locus.kind === 'arc')) {
    return `scribe the base line from ${from} through the place of ${step.label}, and on it strike the ${both}.`;
  }
  if (datum.kind === 'pair' && datum.first === step.point) {
    const about = both === '' ? '' : ` (drawn at ${both})`;
    return `prick it where the plate allows${about}; every later setting starts from here.`;
  }
  return step.done
    ? 'found, and the base line through it is scribed, pointing right.'
    : 'find it, and scribe the base line through it, pointing right.';
}

/** The `same` step carries the point it shares as a line of no length: through both ends. */
function sharedWith({ loci: [locus], point }: MarkingStep): string {
  return locus?.kind === 'line' ? locus.through : point;
}
