/** What distances measured between holes tell, and how far a drilled hole stands off, in sentences. */
import type { DistancesTell, OffPlace } from '../../made/index.ts';
import { asSentence, counted } from '../lists.ts';
import type { Speaker } from '../speaker.ts';

/** Standard deviations beyond which a distance does not agree (common practice). */
const DISAGREES = 3.5;
/** Neighbours that leave more room than so many diameters are not worth a word. */
const NEAR = 4;

/** Which holes the distances show off their places, or that all agree, or that it cannot be told; a sentence each. */
export function holesSay({ distances, report }: DistancesTell, speaker: Speaker): readonly string[] {
  const { length, about, name } = speaker;
  if (report.wrong.length > 0) {
    return report.wrong.map(({ id, dx, dy, plusMinus }) => {
      return `${asSentence(name(id))} stands off its place: ${length(dx)} across, ${length(dy)} up, ±${about(plusMinus)}.`;
    });
  }
  if (report.residuals.some(({ sigmas }) => Math.abs(sigmas) > DISAGREES)) {
    return [
      'They do not all agree, and which hole is wrong cannot be told from them: measure each hole from two others at least.',
    ];
  }
  const agree =
    distances.length === 1
      ? 'The distance that was measured agrees'
      : `All ${counted(distances.length, 'distance')} agree`;
  return [`${agree} with the places, within ±.`];
}

/** Do the distances show something that is wrong? */
export function holesDisagree({ report }: DistancesTell): boolean {
  return report.wrong.length > 0 || report.residuals.some(({ sigmas }) => Math.abs(sigmas) > DISAGREES);
}

/** What is left over of one distance once the places are fitted: "Centre to Third: 0.012 mm (1.2 times its standard deviation)". */
export function leftOverSays(
  { from, to, residual, sigmas }: DistancesTell['report']['residuals'][number],
  { name, length, number }: Speaker,
): string {
  return `${asSentence(name(from))} to ${name(to)}: ${length(residual)} (${number(Math.abs(sigmas), 1)} times its standard deviation)`;
}

/** How far a drilled hole is off, as a heading. */
export function offPlaceSays({ point, dx, dy }: OffPlace, { name, length }: Speaker): string {
  return `${asSentence(name(point))} is ${length(Math.hypot(dx, dy))} off its place`;
}

/** How far a hole can be opened where it stands; undefined where there is room enough. */
export function roomSays({ room, diameter }: OffPlace, { length }: Speaker): string | undefined {
  return room < NEAR * diameter ? `There is room to open it to Ø ${length(room)}.` : undefined;
}
