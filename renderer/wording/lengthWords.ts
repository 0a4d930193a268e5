/** Lengths and angles as the bench shows them: in the movement's unit and decimals, with a true minus sign. */
import { fixed, lengthText } from '../../solver/movement/measures.ts';
import type { Movement } from '../../solver/movement/schema.ts';

const trueMinus = (text: string): string => text.replace('-', '−');

/** A length without its unit. Inches get one decimal more, because they are 25 times as long. */
export function lengthSays(mm: number, { unit, decimals }: Movement['display']): string {
  return trueMinus(lengthText(mm, unit, Math.min(6, unit === 'inch' ? decimals + 1 : decimals)));
}

/** An angle in degrees, 0.00°. */
export function angleSays(radians: number, decimals = 2): string {
  return `${trueMinus(fixed((radians * 180) / Math.PI, decimals))}°`;
}
