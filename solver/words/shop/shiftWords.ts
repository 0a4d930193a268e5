/** Displacements in the plane: how far, and where to, by angle and as on a clock face. */
import type { Shift } from '../../made/index.ts';
import type { Speaker } from '../speaker.ts';

const MINUTES = 12 * 60;

/**
 * A direction as the hour hand points to it, to the nearest five minutes, 12 at the top: "2 o'clock", "20 to 7".
 *
 * @param angle radians anticlockwise from the right
 */
export function clockSays(angle: number): string {
  const hours = 3 - (angle * 6) / Math.PI;
  const minutes = (((5 * Math.round(hours * 12)) % MINUTES) + MINUTES) % MINUTES;
  const [hour, past] = [Math.floor(minutes / 60), minutes % 60];
  const named = (each: number): number => (each % 12 === 0 ? 12 : each % 12);
  if (past === 0) return `${named(hour)} o'clock`;
  return past <= 30
    ? `${PAST[past] ?? past} past ${named(hour)}`
    : `${PAST[60 - past] ?? 60 - past} to ${named(hour + 1)}`;
}

const PAST: Readonly<Record<number, string>> = { 15: 'quarter', 30: 'half' };

/** "0.042 mm along 31.0° (towards 2 o'clock)". */
export function shiftSays({ amount, angle }: Shift, speaker: Speaker): string {
  return `${speaker.length(amount)} along ${speaker.direction(angle)} (towards ${clockSays(angle)})`;
}
