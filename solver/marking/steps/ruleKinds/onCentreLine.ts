/** A point on the centre line on the metal: the line itself. */
import { centreLineThrough } from '../centreLineSeen.ts';
import type { RuleKindOnMetal } from './kind.ts';

/** How its point is struck. */
export const onCentreLineOnMetal: RuleKindOnMetal<'onCentreLine'> = {
  locus: (ground, { id }, at) => centreLineThrough(ground, id, at),
};
