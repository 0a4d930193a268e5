/** A reading as it is typed, and the item of the movement that it becomes. */

import type { PartId } from '../../solver/movement/ids.ts';
import type { ItemInput } from '../../solver/movement/index.ts';
import { parseLength } from '../../solver/movement/measures.ts';
import type { Movement, Reading } from '../../solver/movement/schema.ts';
import { measureProblemSays, speakerOf } from '../../solver/words/index.ts';

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

/** The fields of the form as they stand. */
export interface ReadingTyped {
  value: string;
  how: How;
  pins: readonly [string, string];
  zero: string;
  plusMinus: string;
  gauge: string;
  note: string;
}

export const EMPTY: Readonly<ReadingTyped> = {
  value: '',
  how: 'direct',
  pins: ['', ''],
  zero: '',
  plusMinus: '',
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
  const { unit } = movement.display;
  const mm: Partial<Record<string, number>> = {};
  const fields = [
    ['Reading', typed.value, true],
    ['First pin', typed.pins[0], hasPins(typed.how)],
    ['Second pin', typed.pins[1], hasPins(typed.how)],
    ['Zero', typed.zero, false],
    ['±', typed.plusMinus, false],
  ] as const;
  for (const [name, text, isWanted] of fields) {
    if (text.trim() === '' && !isWanted) continue;
    const read = parseLength(text.replaceAll('−', '-'), unit);
    if (read.kind === 'problem') {
      return { kind: 'problem', says: `${name}: ${measureProblemSays(read.problem, speakerOf(movement))}` };
    }
    if (read.mm < 0 && name !== 'Zero') return { kind: 'problem', says: `${name}: ${text} is below zero. Check it.` };
    mm[name] = read.mm;
  }
  if (!/^\d{4}-\d\d-\d\d$/.test(date)) return { kind: 'problem', says: 'Day: choose the day on which it was taken.' };
  const [a, b] = hasPins(typed.how) ? [mm['First pin'] ?? 0, mm['Second pin'] ?? 0] : [];
  const item: ItemInput<'readings'> = {
    id: freshReadingId(movement),
    kind,
    of: [...of],
    ...(bearing === undefined ? {} : { bearing }),
    value: mm['Reading'] ?? 0,
    taken: {
      how: typed.how,
      ...(a === undefined || b === undefined ? {} : { pins: [a, b] }),
      ...(mm['Zero'] === undefined ? {} : { zero: mm['Zero'] }),
    },
    ...(mm['±'] === undefined ? {} : { plusMinus: mm['±'] }),
    ...(typed.gauge.trim() === '' ? {} : { gauge: typed.gauge.trim() }),
    date,
    ...(typed.note.trim() === '' ? {} : { note: typed.note.trim() }),
  };
  return { kind: 'reading', item };
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
