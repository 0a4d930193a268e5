/** Cures as what a maker does: "Turn post 2 by +4.6° about Centre: gap 1.000 mm". No full stop: a button bears them. */
import type { CureDeed, NewCollar, Remedy } from '../../clearance/index.ts';
import { listed } from '../lists.ts';
import { ruleQuoted } from '../rules.ts';
import { type Sentences, sentenceOf } from '../saying.ts';
import type { Speaker } from '../speaker.ts';
import { namesOfParts, pieceWords } from './pieces.ts';

/** The deeds of one kind. */
type DeedOf<K extends CureDeed['kind']> = CureDeed & { readonly kind: K };

/** Figures of a module that say which cutter is meant. */
const MODULE_FIGURES = 6;

/** Figures of teeth as they are called, and whether they are lengths. */
const TOOTH_FIELDS: Readonly<
  Record<DeedOf<'giveTeethFigure'>['field'], { readonly says: string; readonly isLength: boolean }>
> = {
  tipDiameter: { says: 'tip diameter', isLength: true },
  addendum: { says: 'addendum', isLength: false },
  dedendum: { says: 'dedendum', isLength: false },
  toothThickness: { says: 'tooth thickness', isLength: true },
  thicknessFactor: { says: 'thickness factor', isLength: false },
  pressureAngle: { says: 'pressure angle', isLength: false },
  toothAngle: { says: 'angle of the teeth', isLength: false },
  profileShift: { says: 'profile shift', isLength: false },
  trundleDiameter: { says: 'diameter of the pins', isLength: true },
  outerDiameter: { says: 'outer diameter', isLength: true },
  table: { says: 'table', isLength: false },
};

const SAYS: Sentences<CureDeed> = {
  turnPost: ({ post, about, by }, { name, angle }) =>
    `Turn ${name(post)} by ${by > 0 ? '+' : ''}${angle(by)} about ${name(about)}`,
  otherCrossing: ({ arbor }, { name }) => `Plant ${name(arbor)} at its other crossing`,
  moveArbors: ({ moved }, speaker) => {
    const moves = moved.map(
      ({ arbor, to, distance }) =>
        `${speaker.name(arbor)} by ${speaker.length(distance)} to ${placeWords(to, speaker)}`,
    );
    return `Move ${listed(moves)}`;
  },
  holdAt: ({ arbor, to, distance }, speaker) =>
    `Hold ${speaker.name(arbor)} at ${placeWords(to, speaker)}, ${speaker.length(distance)} from its place`,
  setDirection: ({ arbor, direction, distance }, speaker) =>
    `Set the direction of ${speaker.name(arbor)} to ${speaker.direction(direction, 3)}, which moves it ${speaker.length(distance)}`,
  moveWheels: ({ wheels, by }, speaker) => `Move ${namesOfParts(wheels, speaker)} ${upOrDown(by, speaker)}`,
  thin: ({ wheel, by, from }, { name, length }) => `Thin ${name(wheel)} by ${length(by)} from ${from}`,
  top: ({ wheel, tipDiameter }, { name, length }) => `Top ${name(wheel)} to ${length(tipDiameter)} over the tips`,
  leaveToForm: ({ wheel, fields }, { name }) =>
    `Leave ${listed(fields.map((field) => `the ${TOOTH_FIELDS[field].says}`))} of ${name(wheel)} to its form`,
  giveTeethFigure: ({ wheel, field, value }, speaker) => {
    const { says, isLength } = TOOTH_FIELDS[field];
    return `Give ${speaker.name(wheel)} ${/^[aeiou]/.test(says) ? 'an' : 'a'} ${says} of ${isLength ? speaker.length(value) : speaker.number(value, 3)}`;
  },
  cutAsPinion: ({ wheel }, { name }) => `Cut ${name(wheel)} as a pinion`,
  lowerAddendum: ({ wheels, addendum }, speaker) =>
    `Give ${namesOfParts(wheels, speaker)} an addendum of ${speaker.number(addendum, 2)} module`,
  cutInSizeOf: ({ wheel, like }, { name }) => `Cut ${name(wheel)} in the size of ${name(like)}`,
  moveToMeet: ({ wheel, mate, by }, speaker) =>
    `Move ${speaker.name(wheel)} ${upOrDown(by, speaker)} to meet ${speaker.name(mate)}`,
  giveTeeth: ({ wheel, teeth, instead }, { name }) => `Give ${name(wheel)} ${teeth} teeth for ${instead}`,
  recut: ({ wheels, module, instead }, speaker) =>
    `Cut ${namesOfParts(wheels, speaker)} with module ${moduleFigure(module)} for ${moduleFigure(instead)}`,
  setPhase: ({ wheel, phase }, { name, angle }) =>
    `Set ${name(wheel)} on its arbor with a tooth ${angle(phase, 3)} from the drawing's zero, and keep that angle`,
  useCalculated: ({ wheels, distance }, speaker) =>
    `Use the calculated depth of ${namesOfParts(wheels, speaker)}, ${speaker.length(distance)}`,
  holdDepth: ({ wheels, distance }, speaker) =>
    `Hold the depth of ${namesOfParts(wheels, speaker)} at ${speaker.length(distance)}`,
  leaveOutDepth: ({ wheels }, speaker) => `Leave out the depth of ${namesOfParts(wheels, speaker)}`,
  bush: ({ arbors, play }, speaker) => `Bush ${namesOfParts(arbors, speaker)} to ${speaker.length(play)} of play`,
  setLength: ({ rule, length }, speaker) => `Set ${ruleQuoted(rule, speaker)} to ${speaker.length(length)}`,
  setAngle: ({ rule, angle }, speaker) => `Set ${ruleQuoted(rule, speaker)} to ${speaker.angle(angle, 4)}`,
  shortenSwept: ({ piece, farthest }, speaker) =>
    `Shorten ${pieceWords(piece, speaker)} to ${speaker.length(farthest)} from its axis`,
  moveSwept: ({ piece, by }, speaker) => `Move ${pieceWords(piece, speaker)} ${upOrDown(by, speaker)}`,
  turnHead: ({ post, diameter }, { name, length }) => `Turn the head of ${name(post)} down to Ø ${length(diameter)}`,
  shorten: ({ piece, by, from }, speaker) => `Shorten ${pieceWords(piece, speaker)} by ${speaker.length(by)} ${from}`,
  putCollars: collarsWords,
  giveEndShake: ({ arbor, endShake }, { name, length }) => `Give ${name(arbor)} an end shake of ${length(endShake)}`,
  makeNotch: ({ opening }, { name }) => `Make ${name(opening)} a notch`,
  turnArbor: ({ arbor, diameter }, { name, length }) => `Turn ${name(arbor)} down to Ø ${length(diameter)}`,
  turnPivots: ({ arbor, pivot }, { name, length }) =>
    `Give ${name(arbor)} pivots of Ø ${length(pivot)}, with holes to them`,
  turnPlate: ({ plate, diameter }, { name, length }) => `Turn ${name(plate)} down to Ø ${length(diameter)}`,
  lengthenBearing: ({ arbor, length: long }, { name, length }) =>
    `Give ${name(arbor)} a collar ${length(long)} long to run in`,
  openHole: ({ post, hole }, { name, length }) => `Open the hole of ${name(post)} to Ø ${length(hole)}`,
  openBore: ({ wheel, bore }, { name, length }) => `Open the bore of ${name(wheel)} to Ø ${length(bore)}`,
  leaveRim: ({ wheel, rim }, { name, length }) => `Leave ${name(wheel)} a rim of ${length(rim)}`,
  reach: ({ part }, { name }) => `Leave the heights of ${name(part)} blank, so that it reaches all that it has to`,
  setAgainst: ({ post, wall, by }, { name, length }) =>
    `Move ${name(post)} by ${length(Math.abs(by))} ${by > 0 ? 'up to' : 'out of'} ${name(wall)}`,
  makeLength: ({ post, length: long }, { name, length }) =>
    `Make ${name(post)} ${length(long)} long, from plate to plate`,
  putBearings: ({ arbor, plates, endShake }, speaker) =>
    `Let ${speaker.name(arbor)} run in ${namesOfParts(plates, speaker)}, on pivots of six tenths of its diameter and with an end shake of ${speaker.length(endShake)}`,
  wantSense: ({ indication, sense }, { movement }) => {
    const hand = movement.indications.find(({ id }) => id === indication);
    return `Want ${hand?.name?.trim() || 'the indication'} ${sense}, if that is what was meant`;
  },
  letTurn: ({ arbor }, { name }) => `Let ${name(arbor)} turn`,
  holdStill: ({ arbor }, { name }) => `Fix ${name(arbor)} to what it stands on, so that it never turns`,
  fixPipe: ({ arbor, on }, { name }) => `Fix ${name(arbor)} on ${name(on)}`,
};

/** What a cure does, and for a gap what it then is. */
export function cureSays({ deed, gapAfter }: Pick<Remedy, 'deed' | 'gapAfter'>, speaker: Speaker): string {
  const does = sentenceOf(SAYS, deed, speaker);
  return gapAfter === undefined ? does : `${does}: gap ${speaker.length(gapAfter)}`;
}

const moduleFigure = (module: number): string => String(Number(module.toPrecision(MODULE_FIGURES)));

function upOrDown(by: number, { length }: Speaker): string {
  return `${by > 0 ? 'up' : 'down'} by ${length(Math.abs(by))}`;
}

function placeWords({ x, y }: DeedOf<'holdAt'>['to'], { figure }: Speaker): string {
  return `(${figure(x)}, ${figure(y)})`;
}

function collarsWords({ collars }: DeedOf<'putCollars'>, { name, length }: Speaker): string {
  const put = collars.map(
    ({ arbor, diameter, from, to }: NewCollar) =>
      `put a collar Ø ${length(diameter)} on ${name(arbor)} from ${length(from)} to ${length(to)}`,
  );
  return put.join(', and ').replace(/^p/, 'P');
}
