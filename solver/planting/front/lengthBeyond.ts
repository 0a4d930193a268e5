/** Lengths that are offered to cure a disagreement, rounded so that they hold as they are printed. */
import { MM_PER_INCH } from '../../movement/measures.ts';
import type { Movement } from '../../movement/schema.ts';

/**
 * A length, mm, that a maker can enter as it is printed and that really crosses: the limit itself would only touch, and a
 * point where two loci touch is not settled. It lies beyond the limit by half a last place to one and a half.
 */
export function lengthBeyond(
  limit: number,
  { unit, decimals }: Movement['display'],
  way: 'atLeast' | 'atMost',
): number {
  const size = (unit === 'inch' ? MM_PER_INCH : 1) / 10 ** decimals;
  // A millionth of the last place is rounding of the sum, not a reason to go on.
  const places = limit / size;
  return size * (way === 'atLeast' ? Math.floor(places + 0.5 + 1e-6) + 1 : Math.ceil(places - 0.5 - 1e-6) - 1);
}
