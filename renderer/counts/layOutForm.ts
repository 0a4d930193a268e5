/** How a found train goes into the movement: size and form of its teeth, where it starts, what its last arbor shows. */

import type { Edit } from '../../solver/movement/index.ts';
import type { Form, Movement } from '../../solver/movement/schema.ts';
import {
  type AstronomyConstant,
  type CountedTrain,
  editOfTrains,
  type LayOut,
  readPeriod,
  type TrainEdit,
} from '../../solver/train/counts/index.ts';
import { toNumber } from '../../solver/train/turning/rational.ts';
import { statedPeriod } from './countsForm.ts';

/** The form as it is typed. */
export interface LayOutForm {
  /** "0.8" or "module 0.8", "32 dp". */
  size: string;
  form: Form;
  /** Id of the arbor that the train starts from; empty for a new one. */
  start: string;
  /** Name of the hand; what it shows is recorded with the train. */
  name: string;
}

/** The size of teeth as the movement keeps it. */
export type ToothSize = { readonly module: number } | { readonly diametralPitch: number };

export const SIZE_SAYS = 'The size is no number: write a module such as 0.8, or a diametral pitch such as 32 dp.';

/** The size as typed; `undefined` where it is none. */
export function readSize(text: string): ToothSize | undefined {
  const match = /^\s*(?:module|m)?\s*(\d*\.?\d+)\s*(dp)?\s*$/i.exec(text.replace(',', '.'));
  const value = Number(match?.[1]);
  if (!match || !(value > 0)) return undefined;
  return match[2] ? { diametralPitch: value } : { module: value };
}

/** One train of several: the last one of `after`, or the start. */
export interface Branch {
  readonly train: Pick<CountedTrain, 'stages' | 'idlers'>;
  readonly name: string;
  /** The wanted period as typed. */
  readonly period: string;
  readonly headingDeg?: number;
}

const THICKNESS = 2;
const GAP = 1;

/** What the last arbor of a train is to show, to be checked from then on. */
function indicationOf(branch: Branch, constants: readonly AstronomyConstant[]): LayOut['indication'] {
  const seconds = readPeriod(branch.period, constants);
  const wanted =
    statedPeriod(branch.period, constants) ?? (seconds && { period: { value: toNumber(seconds), unit: 's' as const } });
  return wanted && { ...(branch.name.trim() === '' ? {} : { name: branch.name.trim() }), ...wanted };
}

/**
 * The one edit that puts a train, or shared stages and their branches, into the movement. A movement that nothing
 * drives yet is driven at the train's first arbor, with the period that the counts were found for.
 *
 * @param from period of the first arbor, as typed
 */
export function takeTrains(
  movement: Movement,
  form: LayOutForm,
  trains: { readonly shared?: Pick<CountedTrain, 'stages' | 'idlers'>; readonly branches: readonly Branch[] },
  around: {
    readonly from: string;
    readonly constants: readonly AstronomyConstant[];
    readonly at: readonly [number, number];
  },
): TrainEdit {
  const size = readSize(form.size);
  if (!size) return { kind: 'refused', says: SIZE_SAYS };
  const start = form.start === '' ? { at: around.at } : { from: form.start };
  const look = { size, form: form.form, thickness: THICKNESS, gap: GAP };
  const sharedStages = trains.shared?.stages.length ?? 0;
  const laid = [
    ...(trains.shared ? [{ train: trains.shared, layOut: { ...look, ...start } }] : []),
    ...trains.branches.map((branch, index) => {
      const indication = indicationOf(branch, around.constants);
      return {
        train: branch.train,
        layOut: {
          ...look,
          ...(trains.shared ? { from: '#0', level: (sharedStages + 2 * index) * (THICKNESS + GAP) } : start),
          ...(branch.headingDeg === undefined ? {} : { headingDeg: branch.headingDeg }),
          ...(indication ? { indication } : {}),
        },
      };
    }),
  ];
  const made = editOfTrains(movement, laid);
  if (made.kind === 'refused' || movement.drive || form.start !== '') return made;
  const first = firstArbor(made.edit.edits);
  const drive = statedPeriod(around.from, around.constants)?.period;
  if (first === undefined || !drive) return made;
  const edits = [...made.edit.edits, { kind: 'describe', set: { drive: { arbor: first, period: drive } } } as const];
  return { ...made, edit: { kind: 'several', edits } };
}

/** The arbor that the edit adds first: the one that the train starts from. */
function firstArbor(edits: readonly Edit[]): string | undefined {
  const add = edits.find((edit) => edit.kind === 'add' && edit.to === 'arbors');
  return add?.kind === 'add' ? add.item.id : undefined;
}
