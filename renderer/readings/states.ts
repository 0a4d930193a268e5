/** The dated history of what was read and made, in words. */

import { partSizes, sizeKeyOf } from '../../solver/made/index.ts';
import type { Speaker } from '../../solver/words/index.ts';
import { partSizeSays } from '../../solver/words/shop/index.ts';

/** A line of the history with its day. */
export interface Dated {
  readonly date: string;
  readonly says: string;
}

/** Readings and made states by day, the latest first; those without a day last. */
export function historyOf(speaker: Speaker): readonly Dated[] {
  const { movement, name, length } = speaker;
  const sizes = new Map(partSizes(movement).map((size) => [size.key, partSizeSays(size, speaker)]));
  const readings = movement.readings.flatMap((reading): Dated[] => {
    const { date, of, at, value, gauge, note, setAside, stands } = reading;
    const place = at && `${length(at[0])}, ${length(at[1])}`;
    const figure = place ?? (value === undefined ? 'no figure' : length(value));
    const more = [gauge, note, setAside ? 'set aside' : undefined].filter((each) => each !== undefined).join(', ');
    const what = sizes.get(sizeKeyOf(reading) ?? '') ?? of.map(name).join(' to ');
    const read = { date: date ?? '', says: `Read ${figure}: ${what}${more ? ` (${more})` : ''}` };
    if (!stands) return [read];
    const by = stands.by === undefined ? '' : `, says ${stands.by}`;
    return [read, { date: stands.date ?? '', says: `The figure ${figure} of ${what} is right as it stands${by}` }];
  });
  const made = movement.made.flatMap(({ point, earlier = [], ...now }) =>
    [...earlier, now].map(({ date, state, at, note }): Dated => {
      const where = at ? ` at ${length(at[0])}, ${length(at[1])}` : '';
      return { date: date ?? '', says: `${name(point)} ${STATES[state]}${where}${note ? ` (${note})` : ''}` };
    }),
  );
  return [...readings, ...made].sort((a, b) => b.date.localeCompare(a.date));
}

const STATES = { toMark: 'to be marked', marked: 'marked', drilled: 'drilled' } as const;
