/** Single readings of a pair at a distance, cheaper than the whole contact: what searches over the distance ask for. */
import type { ToothForm } from '../forms/toothForm.ts';
import { operatingRadius } from './contactOfForms.ts';
import { driveOfTooth } from './driveOfTooth.ts';
import { engagementOf, leadingOf } from './engagement.ts';

/** Steps over the pitch for the readings of a search. */
const STEPS = 24;

/** The free play of a pair at one distance. */
export interface PlayReading {
  /** Free angle of the driven wheel over the pitch, radians: least and mean. */
  readonly least: number;
  readonly mean: number;
  /** The mean along the driven wheel's operating pitch circle, mm. */
  readonly backlash: number;
}

/** The play at a distance; `undefined` where the teeth lose each other. */
export function playAt(driver: ToothForm, driven: ToothForm, distance: number): PlayReading | undefined {
  const drive = driveOfTooth(driver, driven, distance);
  if (!drive || (drive.to - drive.from) * driver.teeth < 2 * Math.PI) return undefined;
  const operating = operatingRadius(driver, driven, distance);
  const engagement = engagementOf(driver, driven, drive, STEPS, operating);
  const { at, entry } = leadingOf(engagement);
  if (entry.includes(-1)) return undefined;
  let least = Number.POSITIVE_INFINITY;
  let sum = 0;
  for (let i = 0; i < STEPS; i++) {
    // Index stays within the steps; the limit the other way is the mirror image, one pitch on.
    const mirrored = i === 0 ? (at[0] as number) : (at[STEPS - i] as number) - engagement.drivenPitch;
    const play = -mirrored - (at[i] as number);
    least = Math.min(least, play);
    sum += play;
  }
  return { least, mean: sum / STEPS, backlash: (sum / STEPS) * operating };
}

/** Halvings of a step when the end of flank contact is sought. */
const HALVINGS = 20;

/**
 * How long one pair of flanks could touch, side on side, were it alone, in pitches: the contact ratio of involute
 * pairs, and its like for any form. 0 where flanks never touch with their sides (straight triangular teeth).
 */
export function flankSpan(driver: ToothForm, driven: ToothForm, distance: number): number {
  const drive = driveOfTooth(driver, driven, distance);
  if (!drive) return 0;
  const pitch = (2 * Math.PI) / driver.teeth;
  const step = pitch / STEPS;
  const flanks = (phi: number) => drive.at(phi).touch === 'flanks';
  const edge = (inside: number, outside: number): number => {
    let [a, b] = [inside, outside];
    for (let i = 0; i < HALVINGS; i++) {
      const middle = (a + b) / 2;
      if (flanks(middle)) a = middle;
      else b = middle;
    }
    return (a + b) / 2;
  };
  let longest = 0;
  let begin: number | undefined;
  for (let phi = drive.from; phi <= drive.to + step; phi += step) {
    const touches = phi <= drive.to && flanks(phi);
    if (touches && begin === undefined) begin = edge(phi, phi - step);
    if (touches || begin === undefined) continue;
    longest = Math.max(longest, edge(phi - step, phi) - begin);
    begin = undefined;
  }
  return longest / pitch;
}
