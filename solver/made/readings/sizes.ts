/**
 * Sizes that a gauge can take of one part: over the tips, thickness, run-out, bores, pivots, the holes they run in, end
 * shake. A measured size is kept beside the drawn one; when it is used it stands in the field that everything reads
 * (contact, clearance, shake, stacks), and the drawn one is kept in `asDrawn`.
 */

import type { PartId } from '../../movement/ids.ts';
import type { Edit } from '../../movement/index.ts';
import { type Arbor, isOfPins, type Movement, type Plate, type Reading, type Wheel } from '../../movement/schema.ts';
import { sizeOfWheel } from '../../teeth/index.ts';

export type SizeKind = Extract<Reading['kind'], 'diameter' | 'thickness' | 'runOut' | 'bore' | 'endShake'>;
export type SizeField = 'tipDiameter' | 'thickness' | 'runOut' | 'bore' | 'diameter' | 'endShake' | 'pivot' | 'hole';

/** One size of a part that can be measured. */
export interface PartSize {
  /** Names the size: the same for every reading of it. */
  readonly key: string;
  readonly kind: SizeKind;
  readonly part: PartId;
  /** For pivots and the holes they run in: which bearing of the arbor, from 0. */
  readonly bearing?: number;
  readonly field: SizeField;
  /** On the drawing, or calculated, mm. */
  readonly drawn: number;
  /** What is reckoned with, mm. */
  readonly inUse: number;
  /** Does the drawing keep a value of its own beside the one in use? */
  readonly isReplaced: boolean;
}

/** Name of the size that a reading is of; undefined for depths, distances and places. */
export function sizeKeyOf({ kind, of, bearing }: Reading): string | undefined {
  return kind === 'depth' || kind === 'distance' || kind === 'place' ? undefined : keyOf(kind, of[0] ?? '', bearing);
}

const keyOf = (kind: string, part: string, bearing?: number): string => `${kind} ${part} ${bearing ?? ''}`.trimEnd();

/** Every size of a movement that can be measured, in the order of the file. */
export function partSizes(movement: Movement): readonly PartSize[] {
  return [
    ...movement.wheels.flatMap((wheel) => wheelSizes(wheel, movement)),
    ...movement.arbors.flatMap((arbor) => arborSizes(arbor)),
    ...movement.posts.flatMap((post) => [
      size(post, post.asDrawn, 'diameter', 'diameter'),
      size(post, post.asDrawn, 'bore', 'hole'),
    ]),
    ...movement.marks.map((mark) => size(mark, mark.asDrawn, 'bore', 'hole')),
    ...movement.plates.map((plate) => {
      const thickness = plate.levels.to - plate.levels.from;
      return size({ id: plate.id, thickness }, plate.asDrawn, 'thickness', 'thickness');
    }),
  ];
}

/** A part as the holder of sizes. */
type Holder = { readonly id: PartId } & { readonly [F in SizeField]?: number };
type Drawn = { readonly [F in SizeField]?: number | typeof OF_FORM } | undefined;
/** Stands for the drawn tips of a wheel that has them from its form. */
const OF_FORM = 'ofForm';

function size(holder: Holder, asDrawn: Drawn, kind: SizeKind, field: SizeField): PartSize {
  const inUse = holder[field] ?? 0;
  const drawn = asDrawn?.[field];
  const isReplaced = drawn !== undefined;
  return {
    key: keyOf(kind, holder.id),
    kind,
    part: holder.id,
    field,
    drawn: typeof drawn === 'number' ? drawn : inUse,
    inUse,
    isReplaced,
  };
}

function wheelSizes(wheel: Wheel, movement: Movement): readonly PartSize[] {
  const own = (kind: SizeKind, field: SizeField) => size(wheel, wheel.asDrawn, kind, field);
  const sizes = [own('thickness', 'thickness'), own('runOut', 'runOut')];
  if (wheel.bore !== undefined) sizes.push(own('bore', 'bore'));
  // The trundles of a lantern pinion have no tips of their own.
  if (isOfPins(wheel)) return sizes;
  const drawn = 2 * sizeOfWheel(wheelAsDrawn(wheel), movement).tipRadius;
  const inUse = 2 * sizeOfWheel(wheel, movement).tipRadius;
  return [{ ...own('diameter', 'tipDiameter'), drawn, inUse }, ...sizes];
}

/** The wheel with the tips that the drawing or the standard gives it. */
export function wheelAsDrawn(wheel: Wheel): Wheel {
  const drawn = wheel.asDrawn?.tipDiameter;
  if (drawn === undefined) return wheel;
  const { tipDiameter: _, ...rest } = wheel;
  return drawn === OF_FORM ? rest : { ...rest, tipDiameter: drawn };
}

function arborSizes(arbor: Arbor): readonly PartSize[] {
  const bearings = arbor.bearings.flatMap((bearing, index): PartSize[] => {
    const holder = { id: arbor.id, bore: bearing.bore, pivot: bearing.pivot };
    const own = (kind: SizeKind, field: SizeField): PartSize => ({
      ...size(holder, bearing.asDrawn, kind, field),
      key: keyOf(kind, arbor.id, index),
      bearing: index,
    });
    return [own('diameter', 'pivot'), own('bore', 'bore')];
  });
  return [
    size(arbor, arbor.asDrawn, 'diameter', 'diameter'),
    ...bearings,
    size(arbor, arbor.asDrawn, 'endShake', 'endShake'),
  ];
}

/**
 * The edit by which a measured size is reckoned with from now on, or, without one, the drawn size again. Undefined where
 * the part or its bearing is gone.
 *
 * @param value mm
 */
export function editOfSize(movement: Movement, { part, field, bearing }: PartSize, value?: number): Edit | undefined {
  const plate = movement.plates.find(({ id }) => id === part);
  if (plate) return editOfPlate(plate, value);
  const holders: readonly { readonly id: string }[][] = [
    [...movement.wheels],
    [...movement.arbors],
    [...movement.posts],
    [...movement.marks],
  ];
  const holder = holders.flat().find(({ id }) => id === part);
  if (!holder) return undefined;
  if (bearing === undefined) return { kind: 'change', id: part, ...exchanged(holder, field, value) };
  const arbor = movement.arbors.find(({ id }) => id === part);
  if (!arbor?.bearings[bearing]) return undefined;
  const bearings = arbor.bearings.map((each, index) => {
    if (index !== bearing) return each;
    const { set, unset } = exchanged(each, field, value);
    return Object.fromEntries(Object.entries({ ...each, ...set }).filter(([name]) => !unset.includes(name)));
  });
  return { kind: 'change', id: part, set: { bearings } };
}

/** A nanometre: what is left of a mean beyond it only fills the file. */
const NEAT = 1e6;

/** Fields of a part with the size in place, and the drawn one kept; or the drawn one back. */
function exchanged(
  holder: object,
  field: SizeField,
  value: number | undefined,
): { readonly set: Readonly<Record<string, unknown>>; readonly unset: readonly string[] } {
  const fields: Partial<Record<string, unknown>> = { ...holder };
  const kept = fields['asDrawn'];
  // An object of drawn sizes by the schema, where it is there at all.
  const { [field]: drawn, ...others } = { ...(typeof kept === 'object' ? kept : {}) } as Partial<
    Record<string, number | typeof OF_FORM>
  >;
  if (value === undefined) {
    const left = Object.keys(others).length > 0 ? { asDrawn: others } : {};
    const isOpen = drawn === undefined || drawn === OF_FORM;
    const set = isOpen ? left : { ...left, [field]: drawn };
    const unset = ['asDrawn' in left ? [] : ['asDrawn'], isOpen ? [field] : []].flat();
    return { set, unset };
  }
  const before = drawn ?? fields[field] ?? (field === 'tipDiameter' ? OF_FORM : undefined);
  const asDrawn = before === undefined ? others : { ...others, [field]: before };
  const set = { [field]: Math.round(value * NEAT) / NEAT };
  return Object.keys(asDrawn).length > 0 ? { set: { ...set, asDrawn }, unset: [] } : { set, unset: [] };
}

/** A plate keeps its marked face where it is. */
function editOfPlate(plate: Plate, value: number | undefined): Edit | undefined {
  const { from, to } = plate.levels;
  const thickness = value === undefined ? plate.asDrawn?.thickness : Math.round(value * NEAT) / NEAT;
  if (thickness === undefined) return undefined;
  const levels = plate.markedFace === 'up' ? { from: to - thickness, to } : { from, to: from + thickness };
  const asDrawn = { ...plate.asDrawn, thickness: plate.asDrawn?.thickness ?? to - from };
  if (value === undefined) return { kind: 'change', id: plate.id, set: { levels }, unset: ['asDrawn'] };
  return { kind: 'change', id: plate.id, set: { levels, asDrawn } };
}
