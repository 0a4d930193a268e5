/** The calculated depth of an involute pair, and when two do not run together. */
import type { Movement, Wheel } from '../../movement/schema.ts';
import type { Mismatch } from '../pairFaults.ts';
import { involute, involuteAngle } from './involuteFunction.ts';
import { rackOf } from './involuteSize.ts';
import { moduleOf } from './moduleOf.ts';
import type { CalculatedDepth } from './wheelSize.ts';

/** Pressure angles closer than this are the same, radians: a millionth of a degree, below any file's digits. */
const SAME_ANGLE = (1e-6 * Math.PI) / 180;

/** Two involute wheels of equal pitch and the distance of their pitch circles, mm. */
interface InvolutePair {
  readonly wheels: readonly [Wheel, Wheel];
  readonly movement: Movement;
  readonly distance: number;
  readonly internal: boolean;
}

/** Pressure angles that differ, if they do. */
export function anglesDiffer(a: Wheel, b: Wheel, movement: Movement): Mismatch | undefined {
  const wheels = [a.id, b.id] as const;
  const [pa, pb] = [rackOf(a, movement).alpha, rackOf(b, movement).alpha];
  if (Math.abs(pa - pb) < SAME_ANGLE) return undefined;
  const base = (wheel: Wheel, alpha: number) => Math.PI * moduleOf(wheel.size) * Math.cos(alpha);
  return { kind: 'pressureAngles', wheels, angles: [pa, pb], apart: Math.abs(base(a, pa) - base(b, pb)) };
}

/** No play: the tooth thicknesses fill the pitch on the operating circles. As-cut thicknesses do not count (they make the play). */
export function involuteDepth({ wheels, movement, distance, internal }: InvolutePair): CalculatedDepth {
  const [a, b] = wheels;
  const { alpha } = rackOf(a, movement);
  // Without a sum of shifts the pitch circles touch, exactly.
  if (a.profileShift + b.profileShift === 0) return { kind: 'depth', distance, pressureAngle: alpha, internal };
  // Rings count their teeth negative: ISO 21771's convention makes one formula serve both.
  const [za, zb] = [a.internal ? -a.teeth : a.teeth, b.internal ? -b.teeth : b.teeth];
  const value = involute(alpha) + (2 * Math.tan(alpha) * (a.profileShift + b.profileShift)) / (za + zb);
  const working = involuteAngle(value);
  if (working === undefined) {
    const least = (-involute(alpha) * (za + zb)) / (2 * Math.tan(alpha));
    const shifts = [a.profileShift, b.profileShift] as const;
    const sum = za + zb > 0 ? 'above' : 'below';
    return { kind: 'mismatch', why: { kind: 'shifts', wheels: [a.id, b.id], shifts, sum, limit: least }, distance };
  }
  return {
    kind: 'depth',
    distance: (distance * Math.cos(alpha)) / Math.cos(working),
    pressureAngle: working,
    internal,
  };
}
