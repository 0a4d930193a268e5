/** The calculated centre distance of a pair, and what does not match in it. */
import type { Movement, Wheel } from '../../movement/schema.ts';
import { calledOf } from './called.ts';
import { involute, involuteAngle } from './involuteFunction.ts';
import { rackOf } from './involuteSize.ts';
import { moduleOf, sizeWords } from './moduleOf.ts';
import { sizeOfWheel } from './sizeOfWheel.ts';
import type { CalculatedDepth } from './wheelSize.ts';

/** Modules closer than this (relative) are the same size: rounding of a file's digits, far below any cutter's error. */
const SAME_MODULE = 1e-6;

/**
 * Distance of the axes at which the pair's pitch circles touch; involute pairs with profile shift stand where they
 * have no play (inv α′ = inv α + …, ISO 21771), triangular ones at least where no tip bottoms.
 * A pair that cannot mesh as it stands gives `mismatch`, with the reason and the distance of its pitch circles.
 */
export function calculatedDepth(a: Wheel, b: Wheel, movement: Movement): CalculatedDepth {
  const distance = pitchDistance(a, b);
  const says = mismatchOf(a, b, distance, movement);
  if (says !== undefined) return { kind: 'mismatch', says, distance };
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

function mismatchOf(a: Wheel, b: Wheel, distance: number, movement: Movement): string | undefined {
  return ringMismatch(a, b, distance) ?? pitchMismatch(a, b) ?? formMismatch(a, b, movement);
}

function ringMismatch(a: Wheel, b: Wheel, distance: number): string | undefined {
  if (a.internal && b.internal)
    return `${calledOf(a)} and ${calledOf(b)} are both rings with teeth inside: they cannot mesh.`;
  if (!a.internal && !b.internal) return undefined;
  const [ring, wheel] = a.internal ? [a, b] : [b, a];
  if (wheel.teeth >= ring.teeth) {
    return `${calledOf(wheel)} (${wheel.teeth} teeth) does not fit inside the ring ${calledOf(ring)} (${ring.teeth} teeth): the ring needs more teeth than the wheel.`;
  }
  return distance > 0 ? undefined : `${calledOf(wheel)} would stand on the axis of the ring ${calledOf(ring)}.`;
}

function pitchMismatch(a: Wheel, b: Wheel): string | undefined {
  const [ma, mb] = [moduleOf(a.size), moduleOf(b.size)];
  if (Math.abs(ma - mb) <= SAME_MODULE * Math.max(ma, mb)) return undefined;
  const apart = Math.PI * Math.abs(ma - mb);
  const bare = (wheel: Wheel): string => {
    if ('diametralPitch' in wheel.size) return `${Number(wheel.size.diametralPitch.toPrecision(6))} DP is`;
    if ('circularPitch' in wheel.size)
      return `a circular pitch of ${Number(wheel.size.circularPitch.toPrecision(6))} mm is`;
    return `${calledOf(wheel)} is`;
  };
  const plain = (module: number): string => String(Number(module.toPrecision(6)));
  // The wheel whose size is not stated as a module speaks first: that is where the mixture comes from.
  const [first, second] = 'module' in a.size && !('module' in b.size) ? [b, a] : [a, b];
  return `${bare(first)} module ${plain(moduleOf(first.size))}, not ${plain(moduleOf(second.size))} (${calledOf(second)}, ${sizeWords(second.size)}): the pitches of ${calledOf(a)} and ${calledOf(b)} differ by ${apart.toFixed(3)} mm a tooth. Give both wheels the same size.`;
}

/** Pairs of forms that run together: equal forms, and pins with anything that has flanks of its own. */
function formMismatch(a: Wheel, b: Wheel, movement: Movement): string | undefined {
  if (a.form === 'lantern' && b.form === 'lantern') {
    return `${calledOf(a)} and ${calledOf(b)} are both lantern pinions: pins cannot drive pins. Give one of them cut teeth.`;
  }
  if (a.form === 'lantern' || b.form === 'lantern') {
    const other = a.form === 'lantern' ? b : a;
    return other.form === 'involute'
      ? `${calledOf(other)} has involute teeth, which do not drive the pins of a lantern pinion evenly: make it cycloidal (for pins).`
      : undefined;
  }
  if (a.form !== b.form)
    return `${calledOf(a)} is ${a.form}, ${calledOf(b)} is ${b.form}: teeth of the two forms do not run together.`;
  if (a.form !== 'involute') return undefined;
  const [pa, pb] = [rackOf(a, movement).alpha, rackOf(b, movement).alpha].map((alpha) => (alpha * 180) / Math.PI);
  if (pa === undefined || pb === undefined || Math.abs(pa - pb) < 1e-6) return undefined;
  const base = (wheel: Wheel, alphaDeg: number) =>
    Math.PI * moduleOf(wheel.size) * Math.cos((alphaDeg * Math.PI) / 180);
  const apart = Math.abs(base(a, pa) - base(b, pb));
  return `${calledOf(a)} has a pressure angle of ${Number(pa.toPrecision(6))}°, ${calledOf(b)} ${Number(pb.toPrecision(6))}°: their base pitches differ by ${apart.toFixed(3)} mm. Both need the same angle.`;
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
    return {
      kind: 'mismatch',
      says: `${calledOf(a)} and ${calledOf(b)}: profile shifts of ${a.profileShift} and ${b.profileShift} leave no distance at which the teeth can mesh without play; their sum must be ${za + zb > 0 ? 'above' : 'below'} ${least.toFixed(3)}.`,
      distance,
    };
  }
  return {
    kind: 'depth',
    distance: (distance * Math.cos(alpha)) / Math.cos(working),
    pressureAngle: working,
    internal,
  };
}
