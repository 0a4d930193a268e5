/** What is asked about a reading: by its number in the list when it stands in a sentence of its own, or in its own row. */
import type { LengthSlip, PlaceSlip, ReadingDoubt } from '../../made/index.ts';
import type { ReadingId } from '../../movement/ids.ts';
import { type Sentences, sentenceOf } from '../saying.ts';
import type { Speaker } from '../speaker.ts';

const LENGTH_SLIPS: Readonly<Record<LengthSlip, string>> = {
  mmAsInches: 'a figure in millimetres taken as inches',
  inchesAsMm: 'a figure in inches taken as millimetres',
  pointTooFarRight: 'a decimal point one place too far right',
  pointTooFarLeft: 'a decimal point one place too far left',
  doubled: 'a diameter where a radius is wanted, or both sides counted',
  halved: 'a radius where a diameter is wanted',
};

const PLACE_SLIPS: Readonly<Record<PlaceSlip, string>> = {
  mmAsInches: 'figures in millimetres taken as inches',
  inchesAsMm: 'figures in inches taken as millimetres',
  pointTooFarRight: 'a decimal point one place too far right',
  pointTooFarLeft: 'a decimal point one place too far left',
  otherFace: 'a place seen from the other face: x the other way',
  yTurned: 'y counted the other way',
  bothTurned: 'both axes counted the other way',
  axesExchanged: 'x and y exchanged',
};

const place = ([x, y]: readonly [number, number], { length }: Speaker): string => `${length(x)}, ${length(y)}`;

/** What is asked, as it goes on after the name of the reading. */
const ASKED: Sentences<ReadingDoubt> = {
  noFigure: () => 'has no figure: enter what the gauge showed.',
  withinPins: ({ shown, pins: [a, b], least }, { length }) =>
    `gives ${length(shown)} over pins of ${length(a)} and ${length(b)}, shorter than the pins allow (at least ${length(least)}). Check the pins' diameters, the zero, and whether it was taken inside.`,
  notAboveZero: ({ length: mm }, { length }) =>
    `comes to ${length(mm)}: a length is above zero. Check its zero and sign.`,
  slip: ({ length: mm, planned, slip, meant }, { length }) =>
    `comes to ${length(mm)} where ${length(planned)} is planned: it looks like ${LENGTH_SLIPS[slip]}. Did you mean ${length(meant)}?`,
  noTeethLeft: ({ length: mm, root, internal }, { length }) =>
    `comes to ${length(mm)} ${internal ? 'inside' : 'over'} the tips, which leaves no teeth: their roots stand at ${length(root)}.`,
  runOutBeyondTeeth: ({ length: mm, depth }, { length }) =>
    `comes to a run-out of ${length(mm)}, more than the teeth are deep (${length(depth)}).`,
  endShakeBeyondFrame: ({ length: mm, frame }, { length }) =>
    `comes to an end shake of ${length(mm)}, more than the whole frame is high (${length(frame)}).`,
  placeSlip: ({ at, planned, slip, meant }, speaker) =>
    `stands at ${place(at, speaker)} where ${place(planned, speaker)} is planned: it looks like ${PLACE_SLIPS[slip]}. Did you mean ${place(meant, speaker)}?`,
};

/** A reading by its number in the list and its parts: "Reading 3 (Centre to Third)". */
export function readingName(id: string, { movement, name }: Speaker): string {
  const index = movement.readings.findIndex((reading) => reading.id === id);
  const reading = movement.readings[index];
  if (!reading) return 'A reading that is gone';
  const date = reading.date === undefined ? '' : `, ${reading.date}`;
  return `Reading ${index + 1} (${reading.of.map(name).join(' to ')}${date})`;
}

/** What is asked about a reading, with its name. */
export function doubtSays(doubt: ReadingDoubt, speaker: Speaker): string {
  return `${readingName(doubt.reading, speaker)} ${sentenceOf(ASKED, doubt, speaker)}`;
}

/** The same where the reading stands beside it. */
export function doubtOfRow(doubt: ReadingDoubt, speaker: Speaker): string {
  return `It ${sentenceOf(ASKED, doubt, speaker)}`;
}

/** A reading that lies too far from the others of the same thing; `off` mm. */
export function outlierSays({ id, off }: { readonly id: ReadingId; readonly off: number }, speaker: Speaker): string {
  return `${readingName(id, speaker)} ${outlierAsked(off, speaker)}`;
}

/** The same where the reading stands beside it. */
export function outlierOfRow(off: number, speaker: Speaker): string {
  return `It ${outlierAsked(off, speaker)}`;
}

const outlierAsked = (off: number, { length }: Speaker): string =>
  `does not belong with the others: ${length(off)} off the rest, and not used.`;
