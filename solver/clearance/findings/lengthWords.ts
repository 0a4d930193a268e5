/** Lengths as findings say them. */

/** "0.31 mm": hundredths, which is what the maker can act on; never minus zero. */
export function lengthWords(length: number): string {
  const rounded = Math.round(length * 100) / 100;
  return `${(rounded === 0 ? 0 : rounded).toFixed(2)} mm`;
}
