/** A radius on the metal: an arc about the centre. */
import { arcBetween } from '../metalLoci.ts';
import type { RuleKindOnMetal } from './kind.ts';

/** How one of its points is struck. */
export const radiusOnMetal: RuleKindOnMetal<'radius'> = {
  locus: (ground, { id, point, centre }, at) => arcBetween(ground, id, [point, centre], at),
};
