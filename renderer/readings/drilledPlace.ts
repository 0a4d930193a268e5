/** Where a hole was drilled, as it is typed: the reading that is kept, and the place that all readings of the hole give. */

import { editOfPlace, placeReadings } from '../../solver/made/index.ts';
import type { PartId, PointId } from '../../solver/movement/ids.ts';
import { applyEdit, type Edit, type ItemInput } from '../../solver/movement/index.ts';
import type { PlacedMovement } from '../../solver/planting/placed.ts';
import { refusalSays, speakerOf } from '../../solver/words/index.ts';
import { freshReadingId, type ReadingRead, type ReadingTyped } from './readingForm.ts';

/** The fields of the form as they stand. */
export interface PlaceTyped extends Pick<ReadingTyped, 'plusMinus' | 'gauge' | 'note'> {
  /** Where it was found, mm; undefined until typed. */
  readonly x: number | undefined;
  readonly y: number | undefined;
  readonly date: string;
  /** The hole was plugged or drawn over since: what was read of it before is set aside. */
  readonly isAfresh: boolean;
}

/** The edits that the form means, or which field is wrong. */
export type DrilledRead =
  | { readonly kind: 'edits'; readonly edits: readonly Edit[]; readonly says: string }
  | { readonly kind: 'problem'; readonly says: string };

/** The edits that keep the reading and, unless it is doubtful, take the hole as drilled where all its readings put it. */
export function drilledFrom(typed: PlaceTyped, settled: PlacedMovement, point: PointId): DrilledRead {
  const { movement } = settled;
  const read = itemOf(typed, settled, point);
  if (read.kind === 'problem') return read;
  const { item } = read;
  const before = typed.isAfresh ? readBefore(settled, point) : [];
  const keep: Edit[] = [
    ...before.map((id): Edit => ({ kind: 'change', id, set: { setAside: true } })),
    { kind: 'add', to: 'readings', item },
  ];
  const kept = applyEdit(movement, { kind: 'several', edits: keep });
  if (kept.kind === 'refused') return { kind: 'problem', says: refusalSays(kept, speakerOf(movement)) };
  const found = placeReadings(kept.movement, settled.places).find((each) => each.point === point);
  const isDoubted = found?.doubts.some(({ reading }) => reading === item.id) ?? false;
  const edit = found && !found.isUsed ? editOfPlace(kept.movement, found) : undefined;
  const says = isDoubted ? 'Kept, but not used: it is asked about in the list of readings.' : 'Done.';
  return { kind: 'edits', edits: !isDoubted && edit ? [...keep, edit] : keep, says };
}

/** Readings of the place of a hole that count so far. */
export const readBefore = ({ movement }: PlacedMovement, point: PointId): readonly string[] =>
  movement.readings
    .filter(({ kind, of, setAside }) => kind === 'place' && of[0] === point && !setAside)
    .map(({ id }) => id);

function itemOf(
  { x, y, plusMinus, gauge, note, date }: PlaceTyped,
  { movement }: PlacedMovement,
  point: PointId,
): ReadingRead {
  if (x === undefined || y === undefined) {
    return { kind: 'problem', says: `${x === undefined ? 'x' : 'y'} as drilled: type the length first.` };
  }
  if (plusMinus !== undefined && plusMinus < 0) {
    return { kind: 'problem', says: '±: a length below zero is none. Check it.' };
  }
  if (!/^\d{4}-\d\d-\d\d$/.test(date)) {
    return { kind: 'problem', says: 'Day: choose the day on which it was measured.' };
  }
  const item: ItemInput<'readings'> = {
    id: freshReadingId(movement),
    kind: 'place',
    of: [point as PartId], // points are parts
    at: [x, y],
    ...(plusMinus === undefined ? {} : { plusMinus }),
    ...(gauge.trim() === '' ? {} : { gauge: gauge.trim() }),
    date,
    ...(note.trim() === '' ? {} : { note: note.trim() }),
  };
  return { kind: 'reading', item };
}
