/** How far apart in height two solids have to be drawn so that shake leaves them what they owe. */
import type { PlacedMovement } from '../../planting/placed.ts';
import { gapContextOf, lengthwiseOfPair } from '../gaps/gapReadings.ts';
import { pairTermsFor } from '../gaps/pairTerms.ts';
import type { Solid } from '../solids/solid.ts';

/** Gathers what is asked of every pair once: end shake, lean and wobble come on top of what the pair owes, mm. */
export function heightOwedFor(
  placed: PlacedMovement,
  solids: readonly Solid[],
): (first: Solid, second: Solid) => number {
  const termsOf = pairTermsFor(placed.movement);
  const context = gapContextOf(placed, solids);
  return (first, second) => {
    const terms = termsOf(first, second);
    return terms ? terms.height + lengthwiseOfPair(first, second, context) : 0;
  };
}
