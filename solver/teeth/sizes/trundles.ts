/** Trundles: the round pins of a lantern pinion. */
import type { Wheel } from '../../movement/schema.ts';
import { moduleOf } from './moduleOf.ts';

/**
 * Usual trundle diameter × module: as thick as the leaves of a cut pinion, 1.05 to 9 trundles and 1.25 from 10
 * (common practice; about a third to two fifths of the circular pitch).
 */
const usualTrundle = (teeth: number): number => (teeth >= 10 ? 1.25 : 1.05);

/** Radius of a trundle, mm: as stated, else the usual one. */
export function trundleRadiusOf(wheel: Pick<Wheel, 'teeth' | 'size' | 'trundleDiameter'>): number {
  return (wheel.trundleDiameter ?? usualTrundle(wheel.teeth) * moduleOf(wheel.size)) / 2;
}
