/** A distance on the metal: an arc about the other point. */
import { arcBetween } from '../metalLoci.ts';
import type { RuleKindOnMetal } from './kind.ts';

/** How one of its points is struck. */
export const distanceOnMetal: RuleKindOnMetal<'distance'> = {
  locus: (ground, { id, points }, at) => arcBetween(ground, id, points, at),
};
