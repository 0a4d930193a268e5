/** The day, as the movement file writes dates. The only clock of the window's records. */

/** Local day as "2026-03-14". */
export function today(now: Date = new Date()): string {
  const two = (n: number): string => String(n).padStart(2, '0');
  return `${now.getFullYear()}-${two(now.getMonth() + 1)}-${two(now.getDate())}`;
}
