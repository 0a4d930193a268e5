/** A place straight opposite another on the metal: the line through the centre, and the circle about it. */
import { circleAbout, lineThrough } from '../metalLoci.ts';
import { soundStrike } from '../soundStrike.ts';
import type { RuleKindOnMetal } from './kind.ts';

/** How one of its points is struck. */
export const oppositeOnMetal: RuleKindOnMetal<'opposite'> = {
  locus: (ground, { id, point, centre, of }, at) => lineThrough(ground, id, [point, centre, of], at),
  strike: (ground, { id, point, centre, of }, at) =>
    soundStrike('opposite', lineThrough(ground, id, [point, centre, of], at), circleAbout(ground, id, centre, at), at),
};
