/** Sane arms for a wheel that states none, and the least rim. Common practice of the trade unless a line says otherwise. */
import { isOfPins, type Movement, type Wheel } from '../../movement/schema.ts';
import { sizeOfWheel } from '../sizes/sizeOfWheel.ts';
import type { Arms } from './crossingOut.ts';

/** Smallest wheel that is usually crossed out, and count of arms by root diameter, mm: 4 small, 5 and 6 larger. */
const LEAST_DIAMETER = 12;
const COUNTS = [
  { to: 40, count: 4 },
  { to: 90, count: 5 },
  { to: Number.POSITIVE_INFINITY, count: 6 },
] as const;

/** Least radial thickness of a rim inside the roots: the depth of the teeth. */
export function leastRim(wheel: Wheel, movement: Movement): number {
  const size = sizeOfWheel(wheel, movement);
  return Math.abs(size.tipRadius - size.rootRadius);
}

/** Radius of the hub left at the centre: the stated hub, else twice the bore, else a sixth of the roots. */
export function hubRadiusOf(wheel: Wheel, rootRadius: number): number {
  if (wheel.hub) return wheel.hub.diameter / 2;
  const bore = (wheel.bore ?? 0) / 2;
  return Math.min(Math.max(2 * bore, bore + 1.5, rootRadius / 6), 0.45 * rootRadius);
}

/** Arms as stated, with what is not stated filled in; `undefined` when the wheel states none. */
export function statedArms(wheel: Wheel, movement: Movement): Arms | undefined {
  if (!wheel.arms) return undefined;
  const { rootRadius } = sizeOfWheel(wheel, movement);
  const { count, width, widthAtRim, rim, fillet } = wheel.arms;
  return {
    count,
    width,
    widthAtRim: widthAtRim ?? width,
    hubRadius: hubRadiusOf(wheel, rootRadius),
    rimRadius: rootRadius - rim,
    fillet,
  };
}

/**
 * Arms that a maker would likely choose, or `undefined` for a wheel too small to cross out (or a ring).
 * Rim 1.25 of the tooth depth, arms as wide at the rim as the rim is thick, a third wider at the hub.
 */
export function usualArms(wheel: Wheel, movement: Movement, cutterRadius = 0.5): Arms | undefined {
  const { rootRadius } = sizeOfWheel(wheel, movement);
  if (wheel.internal || isOfPins(wheel) || 2 * rootRadius < LEAST_DIAMETER) return undefined;
  const rim = 1.25 * leastRim(wheel, movement);
  const width = Math.max(rim, 0.06 * rootRadius);
  const arms: Arms = {
    count: COUNTS.find(({ to }) => 2 * rootRadius <= to)?.count ?? 6,
    width: (4 / 3) * width,
    widthAtRim: width,
    hubRadius: Math.max(hubRadiusOf(wheel, rootRadius), width),
    rimRadius: rootRadius - rim,
    fillet: Math.max(cutterRadius, 0.3),
  };
  return arms.rimRadius - arms.hubRadius > 4 * arms.fillet ? arms : undefined;
}
