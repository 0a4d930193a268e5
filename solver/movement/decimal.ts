/**
 * Numbers as files and sheets print them: plain digits with a point, never an exponent, never a comma, never minus zero.
 */

import { MM_PER_INCH, fixed as plainFixed } from './measures.ts';

/** Past this size `toFixed` would print an exponent; nothing on a plate is near it. */
const LARGEST = 1e15;

/**
 * A number with exactly `places` decimals.
 *
 * @throws RangeError for a number that is not finite or not below 1e15: nothing of the kind may reach a file
 */
export function decimalFixed(value: number, places: number): string {
  if (!Number.isFinite(value) || Math.abs(value) >= LARGEST) {
    throw new RangeError(`${value} cannot be printed: expected a finite number below 1e15`);
  }
  return plainFixed(value, places);
}

/** Words of drill programs carry at most this many decimals: what simple controllers accept. */
export const WORD_PLACES = 4;

/** A number with at most `places` decimals and at least `least`: trailing zeros are left out. */
export function trimmed(value: number, places: number, least = 0): string {
  const text = decimalFixed(value, places);
  const point = text.indexOf('.');
  if (point < 0) return text;
  let end = text.length;
  while (end > point + 1 + least && text[end - 1] === '0') end--;
  return end === point + 1 ? text.slice(0, point) : text.slice(0, end);
}

/** How lengths are shown to the maker. */
export interface LengthDisplay {
  readonly unit: 'mm' | 'inch';
  readonly decimals: number;
}

/** Decimals of a printed length: an inch is 25 times as long as a millimetre and gets one more. */
export function lengthPlaces({ unit, decimals }: LengthDisplay): number {
  return unit === 'inch' ? Math.min(6, decimals + 1) : decimals;
}

/** A length for words and sheets, in the display unit, without the unit's name. */
export function decimalLengthText(mm: number, display: LengthDisplay): string {
  return decimalFixed(display.unit === 'inch' ? mm / MM_PER_INCH : mm, lengthPlaces(display));
}

/** Half a unit of the last printed place, mm: how far a printed length may be from the true one. */
export function printedHalf(display: LengthDisplay): number {
  return (0.5 / 10 ** lengthPlaces(display)) * (display.unit === 'inch' ? MM_PER_INCH : 1);
}

/** Short name of the unit as it stands after a number. */
export const unitName = (display: LengthDisplay): string => (display.unit === 'inch' ? 'in' : 'mm');
