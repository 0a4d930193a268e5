/** How far the drive is to turn, as typed: turns or time, exact to the last digit. */
import {
  divide,
  exactly,
  fractionText,
  multiply,
  type Rational,
  rational,
} from '../../solver/train/turning/rational.ts';
import { readDate } from './calendar.ts';

/** A span in turns of the drive, or why it cannot be read. */
export type TypedSpan =
  | { readonly kind: 'span'; readonly turns: Rational; readonly says: string }
  | { readonly kind: 'none'; readonly says: string };

const SECONDS: Readonly<Record<string, number>> = {
  s: 1,
  min: 60,
  h: 3600,
  d: 86_400,
  day: 86_400,
  days: 86_400,
  week: 604_800,
  weeks: 604_800,
};

/**
 * "12.5", "27/2 turns", "40 d", "6 h": turns of the drive.
 *
 * @param period seconds of one turn of the drive
 */
export function readSpan(text: string, period: Rational): TypedSpan {
  const match = /^\s*([+-]?[\d.,/]+)\s*(turns?|s|min|h|d|days?|weeks?)?\s*$/.exec(text.replaceAll('−', '-'));
  const value = exactly((match?.[1] ?? '').replaceAll(',', '.'));
  if (!match || !value) {
    return {
      kind: 'none',
      says: `"${text}" is no number of turns and no time: write 12.5, 27/2 turns, 90 s, 6 h or 40 d.`,
    };
  }
  const seconds = SECONDS[match[2] ?? ''];
  const turns = seconds === undefined ? value : divide(multiply(value, rational(seconds)), period);
  return { kind: 'span', turns, says: `${fractionText(turns)} turns of the drive.` };
}

/** Turns of the drive between two dates; the hands stand as they do at rest on the first. */
export function spanOfDates(from: string, to: string, period: Rational): TypedSpan {
  const [start, end] = [readDate(from), readDate(to)];
  if (start.kind === 'none') return start;
  if (end.kind === 'none') return end;
  const seconds = end.seconds - start.seconds;
  const days = rational(seconds, 86_400);
  return {
    kind: 'span',
    turns: divide(rational(seconds), period),
    says: `From ${from.trim()} to ${to.trim()}: ${daysSay(days)}.`,
  };
}

function daysSay({ n, d }: Rational): string {
  const whole = n / d;
  const rest = n - whole * d;
  const hours = rest === 0n ? '' : ` and ${Number(((24n * rest * 3600n) / d).toString()) / 3600} h`;
  return `${whole} ${whole === 1n || whole === -1n ? 'day' : 'days'}${hours}`;
}
