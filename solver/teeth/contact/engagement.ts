/**
 * The engagement of one tooth over a grid of the driver's angle, and which tooth leads at each step of the pitch.
 *
 * Non-null assertions on typed arrays: every index runs within the length the array was made with.
 */
import { TOUCH } from '../../tolerances.ts';
import type { ToothForm } from '../forms/toothForm.ts';
import type { ToothDrive, Touch } from './driveOfTooth.ts';

/** The pushes of one tooth over its engagement, on a grid of the driver's angle that divides the pitch evenly. */
export interface Engagement {
  readonly drive: ToothDrive;
  readonly steps: number;
  /** Grid index of the first entry. */
  readonly first: number;
  readonly angle: Float64Array;
  readonly radius: Float64Array;
  readonly touch: readonly Touch[];
  readonly driverPitch: number;
  readonly drivenPitch: number;
  /** Radians of the driven wheel that count as touching at once. */
  readonly together: number;
}

/** Most pitches of an engagement that are looked at: rings a little larger than their wheel mesh nearly all round. */
const MOST_TEETH_IN_REACH = 400;

/** Asks the push of one tooth at every step of its engagement. */
export function engagementOf(
  driver: ToothForm,
  driven: ToothForm,
  drive: ToothDrive,
  steps: number,
  operating: number,
): Engagement {
  const driverPitch = (2 * Math.PI) / driver.teeth;
  const span = Math.min(drive.to - drive.from, MOST_TEETH_IN_REACH * driverPitch);
  const first = Math.ceil((drive.from * steps) / driverPitch);
  const length = Math.max(1, Math.floor(((drive.from + span) * steps) / driverPitch) - first + 1);
  const angle = new Float64Array(length);
  const radius = new Float64Array(length);
  const touch: Touch[] = [];
  for (let i = 0; i < length; i++) {
    const push = drive.at(((first + i) * driverPitch) / steps);
    angle[i] = push.angle;
    radius[i] = push.radius;
    touch.push(push.touch);
  }
  const together = TOUCH / operating;
  return {
    drive,
    steps,
    first,
    angle,
    radius,
    touch,
    driverPitch,
    drivenPitch: (2 * Math.PI) / driven.teeth,
    together,
  };
}

/** The greatest push at grid step i of the pitch, which tooth gives it, how many share it. */
export interface Leading {
  readonly at: Float64Array;
  readonly entry: Int32Array;
  readonly pairs: Uint8Array;
}

/** The leading pushes; a tooth k pitches ahead has turned the driven wheel k pitches less. */
export function leadingOf(engagement: Engagement): Leading {
  const { steps, first, angle, drivenPitch, together } = engagement;
  const at = new Float64Array(steps).fill(Number.NEGATIVE_INFINITY);
  const entry = new Int32Array(steps).fill(-1);
  const pairs = new Uint8Array(steps);
  for (let i = 0; i < angle.length; i++) {
    const step = (((first + i) % steps) + steps) % steps;
    const ahead = (first + i - step) / steps;
    const push = angle[i]! - ahead * drivenPitch - drivenPitch / 2;
    if (push > at[step]!) {
      at[step] = push;
      entry[step] = i;
    }
  }
  for (let i = 0; i < angle.length; i++) {
    const step = (((first + i) % steps) + steps) % steps;
    const ahead = (first + i - step) / steps;
    if (angle[i]! - ahead * drivenPitch - drivenPitch / 2 >= at[step]! - together) pairs[step]!++;
  }
  return { at, entry, pairs };
}
