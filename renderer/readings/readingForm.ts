/** A reading as it is typed, and the item of the movement that it becomes. */

import type { PartId } from '../../solver/movement/ids.ts';
import type { ItemInput } from '../../solver/movement/index.ts';
import type { Movement, Reading } from '../../solver/movement/schema.ts';

/** How the figure is taken, as the maker says it. */
export const HOWS = {
  direct: 'as it stands',
  over: 'over pins or arbors',
  inside: 'inside, between pins',
  between: 'between points',
  screw: 'by the screw of a depthing tool',
  jaws: 'with flat jaws over the tips',
} as const;
export type How = keyof typeof HOWS;

/** Ways to take a length between two parts, and a size of one. */
export const BETWEEN_HOWS: readonly How[] = ['direct', 'over', 'inside', 'between', 'screw'];
export const TIP_HOWS: readonly How[] = ['direct', 'jaws'];

/** The fields of the form as they stand, lengths in mm; what is not typed yet is undefined. */
export interface ReadingTyped {
  value: number | undefined;
  how: How;
  pinA: number | undefined;
  pinB: number | undefined;
  zero: number | undefined;
  plusMinus: number | undefined;
  gauge: string;
  note: string;
}

export const EMPTY: Readonly<ReadingTyped> = {
  value: undefined,
  how: 'direct',
  pinA: undefined,
  pinB: undefined,
  zero: undefined,
  plusMinus: undefined,
  gauge: '',
  note: '',
};

/** What a figure is of. */
export interface ReadingOf {
  readonly kind: Exclude<Reading['kind'], 'place'>;
  readonly of: readonly PartId[];
  /** Which bearing of an arbor, from 0, for a pivot or its hole. */
  readonly bearing?: number | undefined;
}

/** The reading that the form means, or which field is wrong. */
export type ReadingRead =
  | { readonly kind: 'reading'; readonly item: ItemInput<'readings'> }
  | { readonly kind: 'problem'; readonly says: string };

/** Are pins part of this way? */
export const hasPins = (how: How): boolean => how === 'over' || how === 'inside';

/**
 * Reads the form.
 *
 * @param date the day, as the file writes it
 */
export function readingFrom(
  typed: Readonly<ReadingTyped>,
  movement: Movement,
  { kind, of, bearing }: ReadingOf,
  date: string,
): ReadingRead {
  const { value = 0, pinA, pinB, zero, plusMinus } = typed;
  const missing = missingOf(typed);
  if (missing !== undefined) return { kind: 'problem', says: `${missing}: type the length first.` };
  // Only what stands at zero may be below it.
  if ([value, pinA, pinB, plusMinus].some((mm) => mm !== undefined && mm < 0)) {
    return { kind: 'problem', says: 'The gauge shows: a length below zero is none. Check it.' };
  }
  if (!/^\d{4}-\d\d-\d\d$/.test(date)) return { kind: 'problem', says: 'Day: choose the day on which it was taken.' };
  const item: ItemInput<'readings'> = {
    id: freshReadingId(movement),
    kind,
    of: [...of],
    ...(bearing === undefined ? {} : { bearing }),
    value,
    taken: {
      how: typed.how,
      ...(hasPins(typed.how) ? { pins: [pinA ?? 0, pinB ?? 0] } : {}),
      ...(zero === undefined ? {} : { zero }),
    },
    ...(plusMinus === undefined ? {} : { plusMinus }),
    ...(typed.gauge.trim() === '' ? {} : { gauge: typed.gauge.trim() }),
    date,
    ...(typed.note.trim() === '' ? {} : { note: typed.note.trim() }),
  };
  return { kind: 'reading', item };
}

/** The first field that is wanted and empty, as the form calls it. */
function missingOf({ value, how, pinA, pinB }: Readonly<ReadingTyped>): string | undefined {
  if (value === undefined) return 'The gauge shows';
  if (!hasPins(how)) return undefined;
  if (pinA === undefined) return 'First pin Ø';
  return pinB === undefined ? 'Second pin Ø' : undefined;
}

/** An id that no reading has. */
export function freshReadingId(movement: Movement): string {
  const taken = new Set<string>(movement.readings.map((reading) => reading.id));
  let number = taken.size + 1;
  while (taken.has(`reading-${number}`)) number++;
  return `reading-${number}`;
}

/** What the gauge must have shown for a length, mm: the answer to a doubt that is confirmed. */
export function shownFor({ value, taken }: Reading, length: number, found: number): number {
  const half = ((taken?.pins?.[0] ?? 0) + (taken?.pins?.[1] ?? 0)) / 2;
  const zero = taken?.zero ?? 0;
  // Flat jaws: the length is what they showed times one factor.
  if (taken?.how === 'jaws') {
    return value === undefined || found === 0 ? length : ((value - zero) * length) / found + zero;
  }
  const through = taken?.how === 'over' ? length + half : taken?.how === 'inside' ? length - half : length;
  return through + zero;
}
