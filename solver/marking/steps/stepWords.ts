/** The words of a marking-out step: whole sentences, lengths in the maker's unit, angles with one more decimal. */

import { fixed, type LengthDisplay, lengthText } from '../../movement/decimal.ts';
import type { MarkingLocus, MarkingStep } from '../marks.ts';

/** How the words of a step print lengths and name points. */
export interface StepVoice {
  readonly display: LengthDisplay;
  readonly label: (id: string) => string;
  /** What `offset` distances along the base line are measured from. */
  readonly datumLabel: string;
}

const HALF_TURN = 180;

/** "turned 54.6683° anticlockwise"; the shorter way round. */
export function turnWords(angleDeg: number, display: LengthDisplay): string {
  const places = display.decimals + 1;
  const back = angleDeg > HALF_TURN;
  const shown = fixed(back ? 360 - angleDeg : angleDeg, places);
  return `turned ${shown}° ${back ? 'clockwise' : 'anticlockwise'}`;
}

/** One setting or line, as a phrase. */
export function locusWords(locus: MarkingLocus, voice: StepVoice): string {
  const { display, label } = voice;
  switch (locus.kind) {
    case 'arc':
      return `arc ${lengthText(locus.radius, display)} from ${label(locus.from)}`;
    case 'line':
      return `line through ${label(locus.through)} and ${label(locus.to)}`;
    case 'ray': {
      const from = locus.reference === undefined ? 'the base line' : `the line to ${label(locus.reference)}`;
      return `line from ${label(locus.from)}, ${turnWords(locus.angleDeg, display)} from ${from}`;
    }
    case 'offset':
      return offsetWords(locus, voice);
  }
}

function offsetWords(locus: Extract<MarkingLocus, { kind: 'offset' }>, { display, datumLabel }: StepVoice): string {
  const length = lengthText(Math.abs(locus.distance), display);
  const negative = locus.distance < 0;
  if (locus.from !== 'datum') return `${length} ${negative ? 'outside' : 'from'} the ${locus.from}`;
  if (locus.along === 'y') return `${length} ${negative ? 'below' : 'above'} the base line`;
  return `${length} to the ${negative ? 'left' : 'right'} of ${datumLabel}, along the base line`;
}

/** The check, as a sentence. */
export function checkWords(check: NonNullable<MarkingStep['check']>, voice: StepVoice): string {
  const edge = check.from.endsWith(' edge') ? 'the ' : '';
  return `Check: ${lengthText(check.distance, voice.display)} from ${edge}${voice.label(check.from)}.`;
}

/** A step without its sentence. */
export type Unsaid = Omit<MarkingStep, 'says' | 'number'>;

/** One sentence of a step, and what it is about. */
export interface StepSentence {
  readonly about: 'strike' | 'crossing' | 'accuracy' | 'check' | 'otherWay' | 'warning';
  readonly says: string;
}

/** The sentences of a step, without the name of its point. */
export function stepSentences(step: Unsaid, voice: StepVoice): readonly StepSentence[] {
  const said: StepSentence[] = [{ about: 'strike', says: strikeWords(step, voice) }];
  if (step.crossing !== undefined) said.push({ about: 'crossing', says: `Take ${step.crossing}.` });
  const isSquare = step.kind === 'offset' || step.kind === 'datum';
  if (!isSquare && step.crossingAngleDeg !== undefined && step.movedByHundredth !== undefined) {
    const angle = fixed(step.crossingAngleDeg, 1);
    const moved = fixed(step.movedByHundredth, 3);
    const says = `They cross at ${angle}°; 0.01 mm in one setting moves the point ${moved} mm.`;
    said.push({ about: 'accuracy', says });
  }
  if (step.check) said.push({ about: 'check', says: checkWords(step.check, voice) });
  if (step.orElse !== undefined) said.push({ about: 'otherWay', says: step.orElse });
  if (step.warns !== undefined) said.push({ about: 'warning', says: step.warns });
  return said;
}

/** The whole step, a sentence a line. */
export function stepLines(step: Unsaid, voice: StepVoice): readonly string[] {
  const [strike, ...rest] = stepSentences(step, voice).map(({ says }) => says);
  return [`${step.label}: ${strike ?? ''}`, ...rest];
}

/** What is struck, as a sentence. */
export function strikeWords(step: Unsaid, voice: StepVoice): string {
  const both = step.loci.map((locus) => locusWords(locus, voice)).join(' and ');
  switch (step.kind) {
    case 'datum':
      return datumWords(step, voice, both);
    case 'already':
      return 'already on the metal.';
    case 'same':
      return `shares the place of ${voice.label(sharedWith(step))}: nothing to strike.`;
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

function datumWords(step: Unsaid, voice: StepVoice, both: string): string {
  if (step.loci.some((locus) => locus.kind === 'arc')) {
    return `scribe the base line from ${voice.datumLabel} through the place of ${step.label}, and on it strike the ${both}.`;
  }
  const about = both === '' ? '' : ` (drawn at ${both})`;
  if (step.place.length === 2 && voice.datumLabel === step.label) {
    return `prick it where the plate allows${about}; every later setting starts from here.`;
  }
  return step.done
    ? 'found, and the base line through it is scribed, pointing right.'
    : 'find it, and scribe the base line through it, pointing right.';
}

/** The `same` step carries the point it shares as a line of no length: through both ends. */
function sharedWith(step: Unsaid): string {
  const [locus] = step.loci;
  return locus?.kind === 'line' ? locus.through : step.point;
}
