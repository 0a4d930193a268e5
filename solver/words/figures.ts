/**
 * Figures as sentences, tables and the window print them: the one formatter of lengths and the one of angles.
 *
 * A length is told in the document's unit and decimals; a length that would print as nothing but zeros gets as many
 * decimals as show it, because "wrong by 0.000" tells a maker that all is well.
 */
import { lengthPlaces } from '../movement/decimal.ts';
import { fixed, MM_PER_INCH } from '../movement/measures.ts';
import type { Movement } from '../movement/schema.ts';

/** How a document wants its lengths: unit and decimals. */
export type Display = Movement['display'];

/** The sign before a negative figure: the true one on screen and paper, a hyphen where plain text is read by programs. */
export type Minus = '−' | '-';

/** Decimals beyond which a length is nothing in any workshop: a picometre. */
const MOST_DECIMALS = 9;

/** Short name of the unit as it stands after a figure. */
export function unitOf({ unit }: Display): 'mm' | 'in' {
  return unit === 'inch' ? 'in' : 'mm';
}

/** So many decimals that the value does not print as zero, unless it is zero; at least `decimals`. */
function showing(value: number, decimals: number): string {
  // Less than any decimals show is rounding of the sum: it is nothing.
  const isNothing = Math.abs(value) < 0.5 * 10 ** -MOST_DECIMALS;
  if (isNothing || Math.abs(value) >= 0.5 * 10 ** -decimals) return fixed(isNothing ? 0 : value, decimals);
  const needed = Math.min(MOST_DECIMALS, Math.ceil(-Math.log10(Math.abs(value))) + 1);
  return fixed(value, Math.max(decimals, needed));
}

/** A true minus sign, or a plain hyphen. */
export function withMinus(text: string, minus: Minus = '−'): string {
  return minus === '-' ? text : text.replace(/^-/, '−');
}

/**
 * A length without its unit: "31.270".
 *
 * @param mm     millimetres, finite
 * @param fewer  decimals to leave off, for figures that are only estimates (a ±, a reach)
 */
export function lengthFigure(mm: number, display: Display, { minus = '−' as Minus, fewer = 0 } = {}): string {
  const value = display.unit === 'inch' ? mm / MM_PER_INCH : mm;
  return withMinus(showing(value, Math.max(0, lengthPlaces(display) - fewer)), minus);
}

/** A plain number that is no length (module, ratio, per cent), with so many decimals, more where they would not show it. */
export function numberFigure(value: number, decimals: number, minus: Minus = '−'): string {
  return withMinus(showing(value, decimals), minus);
}

/** A stated number as short as it is: "0.8", "14.5", "1.5875"; never in exponent form, six digits unless told. */
export function plainFigure(value: number, digits = 6, minus: Minus = '−'): string {
  const rounded = Number(value.toPrecision(digits));
  const decimals = Math.max(0, digits - 1 - Math.floor(Math.log10(Math.abs(rounded) || 1)));
  const text = fixed(rounded, Math.min(20, decimals));
  return withMinus(text.includes('.') ? text.replace(/\.?0+$/, '') : text, minus);
}

/** An angle in degrees with its sign: "54.4°". It is a turn or an opening, not a direction, and may be negative. */
export function angleFigure(radians: number, decimals = 1, minus: Minus = '−'): string {
  return `${withMinus(showing((radians * 180) / Math.PI, decimals), minus)}°`;
}

/** A direction in degrees, 0 up to 360, anticlockwise from the stated zero: "54.4°". */
export function directionFigure(radians: number, decimals = 1): string {
  const degrees = ((((radians * 180) / Math.PI) % 360) + 360) % 360;
  const text = fixed(degrees, decimals);
  // Rounding may reach the full turn, which is the zero again.
  return `${Number(text) === 360 ? fixed(0, decimals) : text}°`;
}
