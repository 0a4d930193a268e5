/** The calculated centre distance of a pair, and what does not match in it. */
import type { Movement, Wheel } from '../../movement/schema.ts';
import type { Mismatch } from '../pairFaults.ts';
import { involute, involuteAngle } from './involuteFunction.ts';
import { rackOf } from './involuteSize.ts';
import { moduleOf } from './moduleOf.ts';
import { sizeOfWheel } from './sizeOfWheel.ts';
import type { CalculatedDepth } from './wheelSize.ts';

/** Modules closer than this (relative) are the same size: rounding of a file's digits, far below any cutter's error. */
const SAME_MODULE = 1e-6;
/** Pressure angles closer than this are the same, radians: a millionth of a degree, below any file's digits. */
const SAME_ANGLE = (1e-6 * Math.PI) / 180;

/**
 * Distance of the axes at which the pair's pitch circles touch; involute pairs with profile shift stand where they
 * have no play (inv α′ = inv α + …, ISO 21771), triangular ones at least where no tip bottoms.
 * A pair that cannot mesh as it stands gives `mismatch`, with the reason and the distance of its pitch circles.
 */
export function calculatedDepth(a: Wheel, b: Wheel, movement: Movement): CalculatedDepth {
  const distance = pitchDistance(a, b);
  const why = mismatchOf(a, b, distance, movement);
  if (why !== undefined) return { kind: 'mismatch', why, distance };
  const internal = a.internal || b.internal;
  if (a.form === 'involute') return involuteDepth(a, b, movement, distance, internal);
  if (a.form !== 'triangular' || internal) return { kind: 'depth', distance, internal };
  return { kind: 'depth', distance: Math.max(distance, clearOfRoots(a, b, movement)), internal };
}

/** Clearance left between a triangular tip and the mate's root, × module: our own assumption. */
const TRIANGLE_CLEARANCE = 0.1;

/** Triangular teeth of few-toothed wheels are shallow: the distance at which no tip reaches the other's root. */
function clearOfRoots(a: Wheel, b: Wheel, movement: Movement): number {
  const [sa, sb] = [sizeOfWheel(a, movement), sizeOfWheel(b, movement)];
  const most = Math.max(sa.tipRadius + sb.rootRadius, sb.tipRadius + sa.rootRadius);
  return most + TRIANGLE_CLEARANCE * sa.module;
}

function pitchDistance(a: Wheel, b: Wheel): number {
  const [ra, rb] = [(moduleOf(a.size) * a.teeth) / 2, (moduleOf(b.size) * b.teeth) / 2];
  return a.internal || b.internal ? Math.abs(ra - rb) : ra + rb;
}

function mismatchOf(a: Wheel, b: Wheel, distance: number, movement: Movement): Mismatch | undefined {
  return ringMismatch(a, b, distance) ?? pitchMismatch(a, b) ?? formMismatch(a, b, movement);
}

function ringMismatch(a: Wheel, b: Wheel, distance: number): Mismatch | undefined {
  if (a.internal && b.internal) return { kind: 'twoRings', wheels: [a.id, b.id] };
  if (!a.internal && !b.internal) return undefined;
  const [ring, wheel] = a.internal ? [a, b] : [b, a];
  const wheels = [wheel.id, ring.id] as const;
  if (wheel.teeth >= ring.teeth) return { kind: 'ringTooSmall', wheels, teeth: [wheel.teeth, ring.teeth] };
  return distance > 0 ? undefined : { kind: 'onRingAxis', wheels };
}

function pitchMismatch(a: Wheel, b: Wheel): Mismatch | undefined {
  const [ma, mb] = [moduleOf(a.size), moduleOf(b.size)];
  if (Math.abs(ma - mb) <= SAME_MODULE * Math.max(ma, mb)) return undefined;
  return { kind: 'pitches', wheels: [a.id, b.id], sizes: [a.size, b.size], apart: Math.PI * Math.abs(ma - mb) };
}

/** Pairs of forms that run together: equal forms, and pins with anything that has flanks of its own. */
function formMismatch(a: Wheel, b: Wheel, movement: Movement): Mismatch | undefined {
  const wheels = [a.id, b.id] as const;
  if (a.form === 'lantern' && b.form === 'lantern') return { kind: 'twoLanterns', wheels };
  if (a.form === 'lantern' || b.form === 'lantern') {
    const [lantern, other] = a.form === 'lantern' ? [a, b] : [b, a];
    return other.form === 'involute' ? { kind: 'involuteOnPins', wheels: [lantern.id, other.id] } : undefined;
  }
  if (a.form !== b.form) return { kind: 'forms', wheels, forms: [a.form, b.form] };
  if (a.form !== 'involute') return undefined;
  const [pa, pb] = [rackOf(a, movement).alpha, rackOf(b, movement).alpha];
  if (Math.abs(pa - pb) < SAME_ANGLE) return undefined;
  const base = (wheel: Wheel, alpha: number) => Math.PI * moduleOf(wheel.size) * Math.cos(alpha);
  return { kind: 'pressureAngles', wheels, angles: [pa, pb], apart: Math.abs(base(a, pa) - base(b, pb)) };
}

/** No play: the tooth thicknesses fill the pitch on the operating circles. As-cut thicknesses do not count (they make the play). */
function involuteDepth(a: Wheel, b: Wheel, movement: Movement, distance: number, internal: boolean): CalculatedDepth {
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
