/** What the form of the power view means: the drive, the torques along the train, the pendulum and the pallets. */

import type { Movement } from '../../solver/movement/schema.ts';
import { sizeOfWheel } from '../../solver/teeth/index.ts';
import {
  beatsOfEscape,
  type PalletPlace,
  type Pendulum,
  palletPlace,
  pendulumFor,
  type SpringDrive,
  springDrive,
  type TorqueReport,
  torquesOf,
  type WeightDrive,
  weightDrive,
} from '../../solver/train/drive/index.ts';
import type { Turning } from '../../solver/train/index.ts';
import { divide, magnitude, toNumber } from '../../solver/train/turning/rational.ts';
import { NUMBERS, type NumberName, type PowerForm } from './powerNumbers.ts';

/** Numbers as typed, a comma read as a point; what is none becomes NaN, which the solver refuses by name. */
export function numberOf(form: PowerForm, name: NumberName): number {
  const text = form.numbers[name].trim().replace(',', '.').replace('−', '-');
  return text === '' ? Number.NaN : Number(text);
}

/** Time of one turn of the arbor with the drum or barrel, s; `undefined` where it does not turn. */
export function secondsPerTurn(form: PowerForm, turning: Turning): number | undefined {
  const { drive } = turning;
  const arbor = [...turning.arbors.values()].find(({ id }) => id === (form.power || drive?.arbor));
  const turns = arbor?.rate?.turns;
  return drive && turns && turns.n !== 0n ? toNumber(divide(drive.periodSeconds, magnitude(turns))) : undefined;
}

/** Numbers that cannot be, with the reason for each. */
type Refused = Extract<TorqueReport, { readonly kind: 'refused' }>;
export type Driven = WeightDrive | SpringDrive | Refused;

/** The weight or the spring; `seconds` is the time of one turn of its arbor. */
export function driveOf(form: PowerForm, seconds: number): Driven {
  const value = (name: NumberName): number => numberOf(form, name);
  if (form.kind === 'weight') {
    const turnsPerLayer = form.numbers.turnsPerLayer.trim() === '' ? {} : { turnsPerLayer: value('turnsPerLayer') };
    return weightDrive({
      mass: value('mass'),
      drum: value('drum'),
      cord: value('cord'),
      fall: value('fall'),
      parts: value('parts'),
      pulleyLoss: value('pulleyLoss') / 100,
      secondsPerTurn: seconds,
      ...turnsPerLayer,
    });
  }
  return springDrive({
    barrelRadius: value('barrelRadius') / 2,
    arborRadius: value('arborRadius') / 2,
    thickness: value('thickness'),
    height: value('height'),
    length: value('length'),
    secondsPerTurn: seconds,
  });
}

/** Torque at the drum or barrel, N·mm: of the layer that carries last, or of the turns wound. */
export function torqueOf(form: PowerForm, driven: Driven): number | undefined {
  if (driven.kind === 'weight') return driven.layers.at(-1)?.torque;
  return driven.kind === 'spring' ? driven.torquePerTurn * numberOf(form, 'turnsWound') : undefined;
}

/** The torques along the train for a torque at the power arbor, N·mm, with the losses that were typed. */
export function torques(form: PowerForm, turning: Turning, torque: number): TorqueReport {
  const power = [...turning.arbors.keys()].find((id) => id === form.power);
  return torquesOf(turning, {
    torque,
    lossPerDepth: numberOf(form, 'lossPerDepth') / 100,
    lossPerPivot: numberOf(form, 'lossPerPivot') / 100,
    ...(power === undefined ? {} : { power }),
  });
}

/** Beats an hour that the train gives its escape wheel's pallets; `undefined` where none is chosen or it stands still. */
export function beatsOfTrain(form: PowerForm, movement: Movement, turning: Turning): number | undefined {
  const wheel = movement.wheels.find(({ id }) => id === form.escape);
  const beats = wheel && beatsOfEscape(turning, wheel.arbor, wheel.teeth);
  return beats && toNumber(beats);
}

/** The pendulum for the train's beats, or for those typed where there is no escape wheel. */
export function pendulumOf(form: PowerForm, beats: number | undefined): Pendulum | Refused {
  return pendulumFor({
    beatsPerHour: beats ?? numberOf(form, 'beats'),
    amplitudeDeg: numberOf(form, 'amplitude'),
    gravity: numberOf(form, 'gravity'),
    expansion: numberOf(form, 'expansion') * 1e-6,
  });
}

/** Where the pallets stand for the escape wheel that was chosen; nothing until there is one. */
export function palletsOf(form: PowerForm, movement: Movement): PalletPlace | Refused | undefined {
  const wheel = movement.wheels.find(({ id }) => id === form.escape);
  if (!wheel) return undefined;
  return palletPlace(sizeOfWheel(wheel, movement).tipRadius, wheel.teeth, numberOf(form, 'span'));
}

/** What was refused, the fields called as the view calls them. */
export function refusalSays(refused: Refused): readonly string[] {
  return refused.problems.map(({ field, says }) => {
    const name = field === 'beatsPerHour' ? 'beats' : field === 'amplitudeDeg' ? 'amplitude' : field;
    const label = Object.entries(NUMBERS).find(([key]) => key === name)?.[1].label ?? name;
    const text = says.startsWith(`${field}: `) ? says.slice(field.length + 2) : says;
    return `${label}: ${text.replace('found NaN', 'found no number')}`;
  });
}
