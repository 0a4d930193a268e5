/** Dates as they are typed, and the exact time between two of them, in the Gregorian calendar carried backwards. */

const DATE = /^\s*([+-]?\d{1,6})-(\d{1,2})-(\d{1,2})(?:[ T]+(\d{1,2}):(\d{2})(?::(\d{2}))?)?\s*$/;
const DAYS_IN_MONTH = [31, 29, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31];

const isLeap = (year: number): boolean => (year % 4 === 0 && year % 100 !== 0) || year % 400 === 0;

/**
 * Days from 1970-01-01, whole. Source: counting days in periods of 400 years (146097 days) from 1 March, so that the
 * leap day comes last.
 */
export function dayNumber(year: number, month: number, day: number): number {
  const from = month <= 2 ? year - 1 : year;
  const period = Math.floor(from / 400);
  const yearOfPeriod = from - 400 * period;
  const dayOfYear = Math.floor((153 * ((month + 9) % 12) + 2) / 5) + day - 1;
  const dayOfPeriod = 365 * yearOfPeriod + Math.floor(yearOfPeriod / 4) - Math.floor(yearOfPeriod / 100) + dayOfYear;
  return period * 146_097 + dayOfPeriod - 719_468;
}

/** A date as whole seconds from 1970-01-01, or why it is none. */
export type TypedDate =
  | { readonly kind: 'date'; readonly seconds: bigint }
  | { readonly kind: 'none'; readonly says: string };

/** "2026-03-14", with " 06:30" or " 06:30:15" after it where the time of day matters: whole seconds from 1970. */
export function readDate(text: string): TypedDate {
  const none = (why: string): TypedDate => ({
    kind: 'none',
    says: `"${text}" ${why}: write a date as year, month, day, such as 2026-03-14, with the time after it if it matters: 2026-03-14 06:30.`,
  });
  const match = DATE.exec(text);
  if (!match) return none('is no date');
  const [year = 0, month = 0, day = 0, hours = 0, minutes = 0, seconds = 0] = match
    .slice(1)
    .map((part) => Number(part ?? 0));
  const last = month === 2 && !isLeap(year) ? 28 : (DAYS_IN_MONTH[month - 1] ?? 0);
  if (day < 1 || day > last) return none('names a day that no calendar has');
  if (hours > 23 || minutes > 59 || seconds > 59) return none('names a time that no clock shows');
  return {
    kind: 'date',
    seconds: 86_400n * BigInt(dayNumber(year, month, day)) + BigInt(3600 * hours + 60 * minutes + seconds),
  };
}
