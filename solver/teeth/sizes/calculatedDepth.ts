/** The calculated centre distance of a pair, and what does not match in it. */
import type { Movement, Wheel } from '../../movement/schema.ts';
import { kindOf } from '../forms/kinds/formKinds.ts';
import type { Mismatch } from '../pairFaults.ts';
import { moduleOf } from './moduleOf.ts';
import { meshesOnlyWith } from './partners.ts';
import type { CalculatedDepth, WheelSize } from './wheelSize.ts';

/** Modules closer than this (relative) are the same size: rounding of a file's digits, far below any cutter's error. */
const SAME_MODULE = 1e-6;

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
  const sizeOf = (wheel: Wheel): WheelSize => kindOf(wheel).size(wheel, movement);
  const pair = { wheels: [a, b], movement, distance, internal, sizeOf } as const;
  return kindOf(a).depth?.(pair) ?? { kind: 'depth', distance, internal };
}

function pitchDistance(a: Wheel, b: Wheel): number {
  const [ra, rb] = [(moduleOf(a.size) * a.teeth) / 2, (moduleOf(b.size) * b.teeth) / 2];
  return a.internal || b.internal ? Math.abs(ra - rb) : ra + rb;
}

function mismatchOf(a: Wheel, b: Wheel, distance: number, movement: Movement): Mismatch | undefined {
  return ringMismatch(a, b, distance) ?? pitchMismatch(a, b, movement) ?? formMismatch(a, b, movement);
}

function ringMismatch(a: Wheel, b: Wheel, distance: number): Mismatch | undefined {
  if (a.internal && b.internal) return { kind: 'twoRings', wheels: [a.id, b.id] };
  if (!a.internal && !b.internal) return undefined;
  const [ring, wheel] = a.internal ? [a, b] : [b, a];
  const wheels = [wheel.id, ring.id] as const;
  if (wheel.teeth >= ring.teeth) return { kind: 'ringTooSmall', wheels, teeth: [wheel.teeth, ring.teeth] };
  return distance > 0 ? undefined : { kind: 'onRingAxis', wheels };
}

function pitchMismatch(a: Wheel, b: Wheel, movement: Movement): Mismatch | undefined {
  const [ma, mb] = [moduleOf(a.size), moduleOf(b.size)];
  if (Math.abs(ma - mb) <= SAME_MODULE * Math.max(ma, mb)) return undefined;
  const apart = Math.PI * Math.abs(ma - mb);
  const fault = { kind: 'pitches', wheels: [a.id, b.id], sizes: [a.size, b.size], apart } as const;
  if (meshesOnlyWith(b, a, movement)) return { ...fault, cut: { wheel: b.id, size: a.size } };
  return meshesOnlyWith(a, b, movement) ? { ...fault, cut: { wheel: a.id, size: b.size } } : fault;
}

/** Pairs of forms that run together: equal forms, and those that say of themselves which others they meet. */
function formMismatch(a: Wheel, b: Wheel, movement: Movement): Mismatch | undefined {
  const [own, mate] = [kindOf(a), kindOf(b)];
  if (own.meetsOthers) return own.mismatch?.(a, b, movement);
  if (mate.meetsOthers) return mate.mismatch?.(b, a, movement);
  if (a.form !== b.form) return { kind: 'forms', wheels: [a.id, b.id], forms: [a.form, b.form] };
  return own.mismatch?.(a, b, movement);
}
