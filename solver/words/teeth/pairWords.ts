/** What does not fit between two wheels, and why a pair has no contact. */
import { type ContactFault, type Mismatch, moduleOf, type PairDoubt, type PairFault } from '../../teeth/index.ts';
import { asSentence } from '../lists.ts';
import { type Sentences, sentenceOf } from '../saying.ts';
import type { Speaker } from '../speaker.ts';
import { formSays } from './formWords.ts';
import { sizeSays } from './sizeWords.ts';
import { TOOTH_DOUBTS, TOOTH_FAULTS } from './toothWords.ts';

type Pitches = Extract<Mismatch, { readonly kind: 'pitches' }>;

/** The wheel whose size is not stated as a module speaks first: that is where the mixture comes from. */
function pitchesSay({ wheels, sizes, apart, cut }: Pitches, speaker: Speaker): string {
  const { name, plain, length } = speaker;
  const [a, b] = [0, 1].map((at) => ({ wheel: wheels[at as 0 | 1], size: sizes[at as 0 | 1] })); // two of each
  if (!a || !b) throw new Error('a pair has two wheels');
  const [first, second] = 'module' in a.size && !('module' in b.size) ? [b, a] : [a, b];
  const bare =
    'diametralPitch' in first.size
      ? `${plain(first.size.diametralPitch)} DP is`
      : 'circularPitch' in first.size
        ? `a circular pitch of ${length(first.size.circularPitch)} is`
        : `${name(first.wheel)} is`;
  return `${bare} module ${plain(moduleOf(first.size))}, not ${plain(moduleOf(second.size))} (${name(second.wheel)}, ${sizeSays(second.size, speaker)}): the pitches of ${name(a.wheel)} and ${name(b.wheel)} differ by ${length(apart)} a tooth. ${cutSays({ wheels, ...(cut ? { cut } : {}) }, speaker)}`;
}

/** Which wheel is to be cut otherwise: one that meshes with nothing else, or the pair with all that it meshes with. */
function cutSays({ wheels: [a, b], cut }: Pick<Pitches, 'wheels' | 'cut'>, speaker: Speaker): string {
  const { name } = speaker;
  return cut
    ? `Cut ${name(cut.wheel)} with ${sizeSays(cut.size, speaker)}.`
    : `Both mesh with other wheels as well: one of ${name(a)} and ${name(b)} has to change with all that it meshes with.`;
}

const MISMATCHES: Sentences<Mismatch> = {
  twoRings: ({ wheels: [a, b] }, { name }) =>
    `${name(a)} and ${name(b)} are both rings with teeth inside: they cannot mesh.`,
  ringTooSmall: ({ wheels: [wheel, ring], teeth }, { name }) =>
    `${name(wheel)} (${teeth[0]} teeth) does not fit inside the ring ${name(ring)} (${teeth[1]} teeth): the ring needs more teeth than the wheel.`,
  onRingAxis: ({ wheels: [wheel, ring] }, { name }) =>
    `${name(wheel)} would stand on the axis of the ring ${name(ring)}.`,
  pitches: pitchesSay,
  twoLanterns: ({ wheels: [a, b] }, { name }) =>
    `${name(a)} and ${name(b)} are both lantern pinions: pins cannot drive pins. Give one of them cut teeth.`,
  involuteOnPins: ({ wheels: [, other] }, { name }) =>
    `${name(other)} has involute teeth, which do not drive the pins of a lantern pinion evenly: make it cycloidal (for pins).`,
  forms: ({ wheels: [a, b], forms }, { name }) =>
    `${name(a)} is ${formSays(forms[0])}, ${name(b)} is ${formSays(forms[1])}: teeth of the two forms do not run together.`,
  pressureAngles: ({ wheels: [a, b], angles, apart }, { name, plain, length }) => {
    const [first, second] = angles.map((angle) => `${plain((angle * 180) / Math.PI)}°`);
    return `${name(a)} has a pressure angle of ${first}, ${name(b)} ${second}: their base pitches differ by ${length(apart)}. Both need the same angle.`;
  },
  shifts: ({ wheels: [a, b], shifts, sum, limit }, { name, plain, number }) =>
    `${name(a)} and ${name(b)}: profile shifts of ${plain(shifts[0])} and ${plain(shifts[1])} leave no distance at which the teeth can mesh without play; their sum must be ${sum} ${number(limit, 3)}.`,
};

const CONTACT_FAULTS: Sentences<ContactFault> = {
  bothRings: () => 'Two rings with teeth inside cannot mesh.',
  ringTooFew: () => 'The ring needs more teeth than the wheel inside it.',
  noDistance: ({ distance }, { length }) =>
    Number.isFinite(distance)
      ? `A distance of ${length(distance)} is no distance: it must be above zero.`
      : 'That is no distance: it must be a length above zero.',
  outOfReach: ({ distance, short }, { length }) =>
    `At ${length(distance)} the teeth do not reach each other: short by ${length(short)}.`,
  loseEachOther: ({ distance }, { length }) =>
    `At ${length(distance)} the teeth lose each other: at some places of the pitch none touches.`,
  neverMesh: ({ calculated }, { length }) =>
    `At no distance near ${length(calculated)} do these teeth both keep touching and stay free: they cannot mesh.`,
};

const FAULTS: Sentences<PairFault> = { ...TOOTH_FAULTS, ...MISMATCHES, ...CONTACT_FAULTS };
const DOUBTS: Sentences<PairDoubt> = { ...TOOTH_DOUBTS, ...MISMATCHES };

/** Why two wheels cannot mesh as they stand. */
export function mismatchSays(mismatch: Mismatch, speaker: Speaker): string {
  return asSentence(sentenceOf(MISMATCHES, mismatch, speaker));
}

/** Why a pair has no contact. */
export function pairFaultSays(fault: PairFault, speaker: Speaker): string {
  return asSentence(sentenceOf(FAULTS, fault, speaker));
}

/** What is doubtful in a pair that runs all the same. */
export function pairDoubtSays(doubt: PairDoubt, speaker: Speaker): string {
  return asSentence(sentenceOf(DOUBTS, doubt, speaker));
}
