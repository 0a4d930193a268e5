/** Points at one radius on the metal: the circle about the centre. */
import { circleAbout } from '../metalLoci.ts';
import type { RuleKindOnMetal } from './kind.ts';

/** How one of its points is struck. */
export const sameRadiusOnMetal: RuleKindOnMetal<'sameRadius'> = {
  locus: (ground, { id, centre }, at) => circleAbout(ground, id, centre, at),
};
