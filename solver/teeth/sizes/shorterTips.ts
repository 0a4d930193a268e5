/** Tip shortening of an involute pair with profile shift, so that the standard clearance remains (ISO 21771). */
import { FORMS, type Movement, type Wheel } from '../../movement/schema.ts';
import type { Mismatch } from '../pairFaults.ts';
import { calculatedDepth } from './calculatedDepth.ts';
import { rackOf } from './involuteSize.ts';
import { moduleOf } from './moduleOf.ts';

/** How far a shifted pair moves apart, and what its tips lose for it. */
export interface ShorterTips {
  readonly kind: 'tips';
  /** Distance beyond that of the plain wheels, × module. */
  readonly centreShift: number;
  /** Taken off both addenda, × module (0 or more). */
  readonly shortening: number;
  /** Addendum factors to give the two wheels, × module, and the tip diameters that follow, mm. */
  readonly addenda: readonly [number, number];
  readonly tipDiameters: readonly [number, number];
}

/**
 * The option of shortened tips for an external involute pair at its calculated distance: each addendum becomes
 * (1 + y − x of the mate) × module, y being the distance's own shift. `none` says why it does not apply.
 */
export function shorterTips(
  a: Wheel,
  b: Wheel,
  movement: Movement,
): ShorterTips | { readonly kind: 'none'; readonly why: Mismatch | { readonly kind: 'notExternalInvolutes' } } {
  if ([a, b].some(({ form }) => form !== FORMS.involute.name) || a.internal || b.internal) {
    return { kind: 'none', why: { kind: 'notExternalInvolutes' } };
  }
  const depth = calculatedDepth(a, b, movement);
  if (depth.kind === 'mismatch') return { kind: 'none', why: depth.why };
  const module = moduleOf(a.size);
  const centreShift = depth.distance / module - (a.teeth + b.teeth) / 2;
  const shortening = Math.max(0, a.profileShift + b.profileShift - centreShift);
  const addenda = [rackOf(a, movement).addendum - shortening, rackOf(b, movement).addendum - shortening] as const;
  const diameter = (wheel: Wheel, factor: number) => module * (wheel.teeth + 2 * (factor + wheel.profileShift));
  return {
    kind: 'tips',
    centreShift,
    shortening,
    addenda,
    tipDiameters: [diameter(a, addenda[0]), diameter(b, addenda[1])],
  };
}
