/** Figures as the reports print them: fixed decimals, a point, and no minus before a nought. */

/** A figure with so many decimals, and no minus before a nought. */
export function fixed(value: number, decimals: number): string {
  const text = value.toFixed(decimals);
  return /^-0(\.0*)?$/.test(text) ? text.slice(1) : text;
}

/** Millimetres to three decimals. */
export const mm = (value: number): string => fixed(value, 3);

/** Radians as degrees. */
export const degreesText = (angle: number, decimals = 2): string => `${fixed((angle * 180) / Math.PI, decimals)}°`;
