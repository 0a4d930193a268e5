/** The dated history of what was made, and the movement as it stood on a day. */
import type { Movement } from '../../solver/movement/index.ts';

export interface Dated {
  readonly date: string;
  readonly says: string;
}

/** Readings and made states by day, the latest first; those without a day last. */
export function historyOf(
  movement: Movement,
  nameOf: (id: string) => string,
  length: (mm: number) => string,
): readonly Dated[] {
  const readings = movement.readings.map(({ date, of, value, gauge, note, setAside }): Dated => {
    const figure = value === undefined ? 'no figure' : length(value);
    const more = [gauge, note, setAside ? 'set aside' : undefined].filter((each) => each !== undefined).join(', ');
    return { date: date ?? '', says: `Read ${figure}: ${of.map(nameOf).join(' to ')}${more ? ` (${more})` : ''}` };
  });
  const made = movement.made.map(({ date, point, state, at, note }): Dated => {
    const where = at ? ` at ${length(at[0])}, ${length(at[1])}` : '';
    return { date: date ?? '', says: `${nameOf(point)} ${STATES[state]}${where}${note ? ` (${note})` : ''}` };
  });
  return [...readings, ...made].sort((a, b) => b.date.localeCompare(a.date));
}

const STATES = { toMark: 'to be marked', marked: 'marked', drilled: 'drilled' } as const;

/** Days on which something was read or made, the earliest first. */
export function daysOf(movement: Movement): readonly string[] {
  const days = [...movement.readings, ...movement.made].flatMap(({ date }) => (date === undefined ? [] : [date]));
  return [...new Set(days)].sort();
}

/**
 * The movement as it stood before a day: what was made or read on that day and later is left out, and depths that use a
 * reading of then are calculated again.
 */
export function before(movement: Movement, day: string): Movement {
  const isEarlier = ({ date }: { readonly date?: string }): boolean => date === undefined || date < day;
  const later = new Set(movement.readings.filter((reading) => !isEarlier(reading)).map(({ id }) => id));
  const rules = movement.rules.map((rule) => {
    if (rule.kind !== 'depth' || rule.measured?.reading === undefined || !later.has(rule.measured.reading)) return rule;
    const { measured: _, ...rest } = rule;
    return { ...rest, use: rule.use === 'measured' ? ('calculated' as const) : rule.use };
  });
  return {
    ...movement,
    rules,
    readings: movement.readings.filter(isEarlier),
    made: movement.made.filter(isEarlier),
  };
}
