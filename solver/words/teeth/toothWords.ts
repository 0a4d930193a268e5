/** What is wrong or doubtful in the teeth of a wheel, with the remedy. */
import type { ToothDoubt, ToothFault } from '../../teeth/index.ts';
import { asSentence, listed } from '../lists.ts';
import { type Sentences, sentenceOf } from '../saying.ts';
import type { Speaker } from '../speaker.ts';
import { formSays } from './formWords.ts';
import { diameterSays } from './sizeWords.ts';

/** Why no teeth can be made. */
export const TOOTH_FAULTS: Sentences<ToothFault> = {
  noSpace: ({ wheel, thickness, pitch }, { name, length }) =>
    `${name(wheel)}: teeth ${length(thickness)} thick leave no space in a pitch of ${length(pitch)}; a usual thickness is ${length(pitch / 2)}.`,
  noHeight: ({ wheel, tipDiameter, rootDiameter }, { name, length }) =>
    `${name(wheel)}: a tip diameter of ${length(tipDiameter)} does not reach past the roots at ${length(rootDiameter)}: there is no tooth. Check the tip diameter as cut, the addendum and the dedendum.`,
  noFlanks: ({ wheel }, { name }) => `${name(wheel)} has no flanks at all: its tips stand at its roots.`,
  nothingLeft: ({ wheel }, { name }) =>
    `${name(wheel)}: nothing is left of the teeth on the pitch circle; make them thicker or with a positive profile shift.`,
  unsound: ({ wheel, teeth, internal }, { name }) =>
    `${name(wheel)}: no sound tooth can be formed from ${teeth} ${internal ? 'inside ' : ''}teeth with these factors; go back to the usual addendum, dedendum, thickness and angle, or take more teeth.`,
  spacesToCentre: ({ wheel, depth }, { name, length }) =>
    `${name(wheel)}: spaces ${length(depth)} deep reach the centre of the wheel.`,
  flankCutAway: ({ wheel, teeth, rootCurveDiameter, tipDiameter }, { name, length }) =>
    `${name(wheel)}: the rack cuts away the whole working flank of ${teeth} teeth (the root curve reaches diameter ${length(rootCurveDiameter)}, the tips stand at ${length(tipDiameter)}). Give it more teeth or a positive profile shift.`,
  undercutThrough: ({ wheel, teeth, diameter }, { name, length }) =>
    `${name(wheel)}: ${teeth} teeth are undercut to nothing at diameter ${length(diameter)}. Give it more teeth, a greater pressure angle or a positive profile shift.`,
  ringFilled: ({ wheel }, { name }) => `${name(wheel)}: the ring's teeth fill the whole pitch; make them thinner.`,
  flatTriangles: ({ wheel }, { name }) =>
    `${name(wheel)}: the triangles have no height; check the tooth angle and thickness.`,
  trundlesTouch: ({ wheel, trundleDiameter, apart }, speaker) =>
    `The trundles of ${speaker.name(wheel)} (${diameterSays(trundleDiameter, speaker)}) overlap: their centres stand ${speaker.length(apart)} apart. Thinner pins, or fewer on the same circle, stand free.`,
};

/** What a maker should know of teeth that can be made. */
export const TOOTH_DOUBTS: Sentences<ToothDoubt> = {
  unknownTable: ({ form, table, used, known }) =>
    `Tooth table "${table}" is not known for ${formSays(form)} teeth; ${used} is used. Known: ${listed(known)}.`,
  blankTooLarge: ({ wheel, pointDiameter, tipDiameter }, { name, length }) =>
    `The teeth of ${name(wheel)} come to a point at diameter ${length(pointDiameter)}, inside their tip diameter ${length(tipDiameter)}: turn the blank to ${length(pointDiameter)} or less.`,
  pointed: ({ wheel, pointDiameter, tipDiameter }, { name, length }) =>
    `The teeth of ${name(wheel)} come to a point at diameter ${length(pointDiameter)}, before the tip diameter ${length(tipDiameter)}.`,
  pointedTriangles: ({ wheel, pointDiameter, tipDiameter }, { name, length }) =>
    `The teeth of ${name(wheel)} come to a point at diameter ${length(pointDiameter)}; they cannot reach ${length(tipDiameter)}.`,
  undercut: ({ wheel, teeth, pressureAngle, shift }, { name, angle, number }) =>
    `${name(wheel)}: ${teeth} teeth at ${angle(pressureAngle, 2)} are undercut by the tool that makes them; a profile shift of ${number(shift, 3)} avoids it.`,
  cutToCentre: ({ wheel, dedendum, pitchRadius }, { name, number }) =>
    `The spaces of ${name(wheel)} would be cut to its centre (${number(dedendum, 2)} module deep on a pitch radius of ${number(pitchRadius, 1)}): nothing is left to carry the teeth.`,
  tipsBelowPitch: ({ wheel, below }, { name, length }) =>
    below > 0
      ? `The tips of ${name(wheel)} do not reach its pitch circle: they end ${length(below)} short of it, and no addendum is left.`
      : `The tips of ${name(wheel)} end on its pitch circle: it has no addendum.`,
  ringThin: ({ wheel, rim, least, outerDiameter }, speaker) =>
    `The ring ${speaker.name(wheel)} is ${speaker.length(rim)} thick outside its roots, less than its teeth are deep (${speaker.length(least)}): an outer diameter of ${speaker.length(outerDiameter)} leaves as much.`,
  ringTipsInBase: ({ wheel, baseDiameter }, { name, length }) =>
    `The tips of the ring ${name(wheel)} reach inside its base circle; the teeth are taken to end there, at diameter ${length(baseDiameter)}.`,
  rootsMeet: ({ wheel, meetDiameter, rootDiameter }, { name, length }) =>
    `Neighbouring teeth of ${name(wheel)} meet at diameter ${length(meetDiameter)}: the roots are there, not at ${length(rootDiameter)}.`,
};

const TEETH: Sentences<ToothFault | ToothDoubt> = { ...TOOTH_FAULTS, ...TOOTH_DOUBTS };

/** Why a wheel has no teeth, or what is doubtful in them: whole sentences. */
export function teethSay(told: ToothFault | ToothDoubt, speaker: Speaker): string {
  return asSentence(sentenceOf(TEETH, told, speaker));
}
