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
import type { Speaker } from '../../solver/words/index.ts';
import { inputProblemSays } from '../../solver/words/train/index.ts';
import { NUMBERS, type NumberName, type PowerForm } from './powerNumbers.ts';

/** The form with whoever speaks for the document: its unit is that of bare lengths. */
export interface SpokenForm extends PowerForm {
  readonly speaker: Speaker;
}

/** A number as typed, else as it stands at first, lengths in mm; one that is left open is NaN, which the solver refuses by name. */
export function numberOf(form: PowerForm, name: NumberName): number {
  return form.numbers[name] ?? NUMBERS[name].first ?? Number.NaN;
}

/** Time of one turn of the arbor with the drum or barrel, s; `undefined` where it does not turn. */
export function secondsPerTurn(form: SpokenForm, turning: Turning): number | undefined {
  const { drive } = turning;
  const arbor = [...turning.arbors.values()].find(({ id }) => id === (form.power || drive?.arbor));
  const turns = arbor?.rate?.turns;
  return drive && turns && turns.n !== 0n ? toNumber(divide(drive.periodSeconds, magnitude(turns))) : undefined;
}

/** Numbers that cannot be, with the reason for each. */
type Refused = Extract<TorqueReport, { readonly kind: 'refused' }>;
export type Driven = WeightDrive | SpringDrive | Refused;

/** The weight or the spring; `seconds` is the time of one turn of its arbor. */
export function driveOf(form: SpokenForm, seconds: number): Driven {
  const value = (name: NumberName): number => numberOf(form, name);
  if (form.kind === 'weight') {
    const { turnsPerLayer: layer } = form.numbers;
    const turnsPerLayer = layer === undefined ? {} : { turnsPerLayer: layer };
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
export function torqueOf(form: SpokenForm, driven: Driven): number | undefined {
  if (driven.kind === 'weight') return driven.layers.at(-1)?.torque;
  return driven.kind === 'spring' ? driven.torquePerTurn * numberOf(form, 'turnsWound') : undefined;
}

/** The torques along the train for a torque at the power arbor, N·mm, with the losses that were typed. */
export function torques(form: SpokenForm, turning: Turning, torque: number): TorqueReport {
  const power = [...turning.arbors.keys()].find((id) => id === form.power);
  return torquesOf(turning, {
    torque,
    lossPerDepth: numberOf(form, 'lossPerDepth') / 100,
    lossPerPivot: numberOf(form, 'lossPerPivot') / 100,
    ...(power === undefined ? {} : { power }),
  });
}

/** Beats an hour that the train gives its escape wheel's pallets; `undefined` where none is chosen or it stands still. */
export function beatsOfTrain(form: SpokenForm, movement: Movement, turning: Turning): number | undefined {
  const wheel = movement.wheels.find(({ id }) => id === form.escape);
  const beats = wheel && beatsOfEscape(turning, wheel.arbor, wheel.teeth);
  return beats && toNumber(beats);
}

/** The pendulum for the train's beats, or for those typed where there is no escape wheel. */
export function pendulumOf(form: SpokenForm, beats: number | undefined): Pendulum | Refused {
  return pendulumFor({
    beatsPerHour: beats ?? numberOf(form, 'beats'),
    amplitudeDeg: numberOf(form, 'amplitude'),
    gravity: numberOf(form, 'gravity'),
    expansion: numberOf(form, 'expansion') * 1e-6,
  });
}

/** Where the pallets stand for the escape wheel that was chosen; nothing until there is one. */
export function palletsOf(form: SpokenForm, movement: Movement): PalletPlace | Refused | undefined {
  const wheel = movement.wheels.find(({ id }) => id === form.escape);
  if (!wheel) return undefined;
  return palletPlace(sizeOfWheel(wheel, movement).tipRadius, wheel.teeth, numberOf(form, 'span'));
}

/** Fields of the solver that the form asks for by another name, or as a diameter. */
const NAMES: Readonly<Record<string, NumberName>> = { beatsPerHour: 'beats', amplitudeDeg: 'amplitude' };
const DIAMETERS: ReadonlySet<string> = new Set(['barrelRadius', 'arborRadius']);

/** A number of a field as the form shows it: a length in the document's unit, a share as per cent. */
function figureOf(field: string, name: NumberName | undefined, { length, plain }: Speaker): (value: number) => string {
  const unit = name && NUMBERS[name].unit;
  if (unit === 'length') return (value) => length(DIAMETERS.has(field) ? 2 * value : value);
  if (unit === '%') return (value) => `${plain(100 * value)} %`;
  if (name === 'expansion') return (value) => `${plain(1e6 * value)} ${unit}`;
  return (value) => `${plain(value)}${unit ? ` ${unit}` : ''}`;
}

const isNumberName = (field: string): field is NumberName => field in NUMBERS;

/** What was refused, the fields called and the numbers told as the view does. */
export function driveRefusalSays(refused: Refused, speaker: Speaker): readonly string[] {
  return refused.problems.map((problem) => {
    const { field } = problem;
    const name = isNumberName(field) ? field : NAMES[field];
    const label = name ? NUMBERS[name].label : (OTHERS[field] ?? 'A number');
    return `${label}: ${inputProblemSays(problem, figureOf(field, name, speaker), speaker)}`;
  });
}

/** Fields that the form does not ask for as numbers. */
const OTHERS: Readonly<Record<string, string>> = {
  secondsPerTurn: 'Time of one turn',
  torque: 'Torque',
  power: 'On',
  radius: 'Tip radius of the escape wheel',
  teeth: 'Teeth of the escape wheel',
};
