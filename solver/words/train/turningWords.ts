/** What keeps a train from turning as it should, each with the remedy. */
import {
  type LockedRing,
  periodErrorOf,
  type SharedAxes,
  type TurningFault,
  type TurningProblem,
  type TurningState,
} from '../../train/index.ts';
import { fractionText } from '../../train/turning/rational.ts';
import { asSentence, listed } from '../lists.ts';
import type { Speaker } from '../speaker.ts';
import { nothingShownSays } from './indicationWords.ts';
import { periodErrorSays, roundSays } from './periodWords.ts';

/** A fault and, where there is one, its remedy: whole sentences both. */
export interface FaultWords {
  readonly says: string;
  readonly remedy?: string;
}

type FaultTable = {
  readonly [K in TurningFault['kind']]: (
    told: Extract<TurningFault, { readonly kind: K }>,
    speaker: Speaker,
  ) => FaultWords;
};

/** Names of arbors in a row; beyond twelve the rest is counted. */
function namesSay(ids: readonly string[], { name }: Speaker): string {
  const MOST = 12;
  return ids.length > MOST
    ? `${ids.slice(0, MOST).map(name).join(', ')} and ${ids.length - MOST} more`
    : listed(ids.map(name));
}

/** Why a ring of arbors is locked. */
export function lockedRingSays({ arbors, kind, onceRound }: LockedRing, speaker: Speaker): string {
  const names = listed(arbors.map(speaker.name));
  const first = arbors[0] === undefined ? 'its first arbor' : speaker.name(arbors[0]);
  const REASONS: Readonly<Record<LockedRing['kind'], string>> = {
    senses: `going round it, ${first} would have to turn against itself (senses disagree)`,
    ratios: `going round it, one turn of ${first} would have to be ${onceRound ? fractionText(onceRound) : 'other'} turns`,
    fixed: 'it is held by parts that never turn',
  };
  return `The ring of ${names} is locked: ${REASONS[kind]}.`;
}

/** Depths between the same two axes: their one distance, or which of them does not fit it. */
export function sharedAxesSay({ depths }: SharedAxes, speaker: Speaker): string {
  const { name, length } = speaker;
  const pair = ({ wheels: [a, b] }: SharedAxes['depths'][number]): string => `${name(a)} with ${name(b)}`;
  const recutSays = ({ wheels, recut }: SharedAxes['depths'][number]): string => {
    if (!recut) return 'make the sums equal, or change the module of a pair with all that it meshes with';
    const which = recut.wheels.every((id, i) => id === wheels[i])
      ? 'it'
      : `${name(recut.wheels[0])} with ${name(recut.wheels[1])}`;
    return `make the sums equal, or cut ${which} with module ${roundSays(recut.module, speaker, 6)}`;
  };
  const [first] = depths;
  if (!first) return '';
  const wrong = depths.filter(({ fits }) => !fits);
  if (wrong.length === 0) {
    return asSentence(`${listed(depths.map(pair))} share two axes and one distance of ${length(first.distance)}.`);
  }
  return wrong
    .map((depth) => {
      const way = depth.misfit > 0 ? 'too deep' : 'too shallow';
      return asSentence(
        `${pair(depth)} (sum ${depth.sum}) stands between the same axes as ${pair(first)} (sum ${first.sum}): at ${length(first.distance)} it is ${length(Math.abs(depth.misfit))} ${way}; ${recutSays(depth)}.`,
      );
    })
    .join(' ');
}

const JOININGS = {
  depth: 'A depth',
  worm: 'A worm',
  contrate: 'A contrate pair',
  stepped: 'A finger',
  pipe: 'A pipe',
} as const satisfies Record<Extract<TurningFault, { readonly kind: 'partMissing' }>['joining'], string>;

const FAULTS: FaultTable = {
  noDrive: () => ({
    says: 'Nothing drives the movement.',
    remedy: 'Say which arbor is the drive, its period and its sense.',
  }),
  driveMissing: () => ({
    says: "The drive's arbor is not in the movement.",
    remedy: 'Choose another arbor for the drive.',
  }),
  drivePeriod: ({ value }, { plain }) => ({
    says: `The drive's period is ${Number.isFinite(value) ? plain(value) : 'no number'}; it must be more than 0.`,
    remedy: 'Enter how long one turn takes.',
  }),
  ringLocked: ({ ring }, speaker) => ({
    says: lockedRingSays(ring, speaker),
    remedy:
      ring.kind === 'senses'
        ? 'Put one idler more or one less in the ring, or leave out one of its depths.'
        : 'Change counts in the ring until once round comes to 1, or leave out one of its depths.',
  }),
  driveHeld: ({ drive, fixed }, { name }) => {
    const [first] = fixed;
    return first === undefined
      ? {
          says: `The drive ${name(drive)} cannot turn: the carriers and depths joined to it hold each other fast.`,
          remedy: 'Free one of the wheels on the axis of the carrier.',
        }
      : {
          says: `The drive ${name(drive)} cannot turn: it is joined by teeth to ${listed(fixed.map(name))}, which never ${fixed.length > 1 ? 'turn' : 'turns'}.`,
          remedy: `Let ${name(first)} turn, or leave out a depth between.`,
        };
  },
  carriesItself: ({ arm, carried }, { name }) => ({
    says: `The arm ${name(arm)} cannot carry ${carried === arm ? 'itself: it is the arm itself' : `${name(carried)}, which stands on the axis of the arm`}.`,
    remedy: `Take ${name(carried)} out of what ${name(arm)} carries.`,
  }),
  twoArms: ({ carried, arms: [a, b] }, { name }) => ({
    says: `${name(carried)} is carried by two arms, ${name(a)} and ${name(b)}.`,
    remedy: `Leave ${name(carried)} on one of the two.`,
  }),
  armsInCircle: ({ arms }, { name }) => ({
    says: `The arms ${listed(arms.map(name))} carry each other round in a circle.`,
    remedy: 'One of them must stand on the plates: take it out of the list of what the other carries.',
  }),
  leavesEachOther: ({ carried, other, arm }, { name }) => ({
    says: `${name(carried)} goes round on the arm ${name(arm)} and meshes with ${name(other)}, which is not on the axis of the arm: they leave each other as it turns.`,
    remedy: `Put ${name(other)} at the same place as ${name(arm)}.`,
  }),
  armsApart: ({ arbors: [a, b] }, { name }) => ({
    says: `${name(a)} and ${name(b)} are carried by arms that have nothing to do with each other, so they cannot stay in mesh.`,
    remedy: 'Carry both on one arm, or put one of them on the axis of the arm.',
  }),
  partMissing: ({ joining }) => ({
    says: `${JOININGS[joining]} names a part that is not in the movement.`,
    remedy: 'Add the part, or take out what names it.',
  }),
  withItself: ({ wheel }, { name }) => ({ says: `${name(wheel)} cannot stand in depth with itself.` }),
  onOneArbor: ({ wheels: [a, b], arbor }, { name }) => ({
    says: `${name(a)} and ${name(b)} are on one arbor (${name(arbor)}), so neither can turn the other.`,
  }),
  onOneAxis: ({ wheels: [a, b] }, { name }) => ({
    says: `${name(a)} and ${name(b)} turn about one axis, so they cannot mesh.`,
  }),
  bothInternal: ({ wheels: [a, b] }, { name }) => ({ says: `${name(a)} and ${name(b)} are both internal.` }),
  ringTooFew: ({ wheels: [mate, ring], teeth }, { name }) => ({
    says: `The internal wheel ${name(ring)} has ${teeth[1]} teeth, which must be more than the ${teeth[0]} of ${name(mate)} inside it.`,
  }),
  turnsItself: ({ arbor, wheel }, { name }) => ({
    says: `${name(arbor)} cannot turn ${name(wheel)}, which is on ${name(arbor)} itself.`,
  }),
  ridesOnNone: ({ arbor }, { name }) => ({
    says: `${name(arbor)} is said to turn with the arbor it rides on, but rides on none.`,
    remedy: `Say which arbor ${name(arbor)} rides on, or let it turn freely.`,
  }),
  showsNothing: ({ indication, why }, speaker) => ({
    says: `${speaker.indication(indication)}: ${nothingShownSays(why, speaker)}.`,
  }),
  wrongSense: ({ indication, sense, wanted }, speaker) => ({
    says: `${speaker.indication(indication)} turns ${sense}, which is the wrong way: wanted ${wanted}.`,
    remedy: 'Put one idler more (or one less) between the drive and it, or make one depth internal.',
  }),
  outOfTolerance: ({ indication, error, allowedPpm }, speaker) => {
    const measures = periodErrorOf(error);
    return {
      says: `${speaker.indication(indication)} is off by ${roundSays(measures.ppm, speaker)} ppm, more than the ${roundSays(allowedPpm, speaker)} ppm allowed: ${periodErrorSays(measures, speaker)}.`,
    };
  },
  notDriven: ({ arbors }, speaker) => ({
    says: `Nothing drives ${namesSay(arbors, speaker)}.`,
    remedy: 'Put a depth or a coupling between them and the train, or fix a pipe to the arbor it rides on.',
  }),
  open: ({ arbors }, speaker) => ({
    says: `The rate of ${namesSay(arbors, speaker)} is not settled: a carrier joins ${arbors.length > 1 ? 'them' : 'it'} to the drive, and its other side is free.`,
    remedy: 'Drive the other side as well, or fix one wheel on the axis of the arm, so that it never turns.',
  }),
  axesDisagree: ({ shared }, speaker) => ({ says: sharedAxesSay(shared, speaker) }),
};

/** What keeps the train from turning, and the remedy. */
export function turningFaultWords(fault: TurningFault, speaker: Speaker): FaultWords {
  // The table pairs every kind with its own fields, which the compiler cannot follow through an index.
  const words = FAULTS[fault.kind] as (told: TurningFault, speaker: Speaker) => FaultWords;
  const { says, remedy } = words(fault, speaker);
  return { says: asSentence(says), ...(remedy === undefined ? {} : { remedy }) };
}

/** The same in one row of sentences. */
export function turningProblemSays({ why }: TurningProblem, speaker: Speaker): string {
  const { says, remedy } = turningFaultWords(why, speaker);
  return remedy === undefined ? says : `${says} ${remedy}`;
}

/** An arbor that does not turn at a rate that can be told, in the cell of a table. */
export const TURNING_STATES = {
  turns: 'turns',
  still: 'stands still',
  locked: 'locked',
  notDriven: 'not driven',
  open: 'not settled',
} as const satisfies Record<TurningState, string>;
