/** A point straight above or below another on the metal: a line from the other, by its angle. */
import { rayFromOther } from '../centreLineSeen.ts';
import type { RuleKindOnMetal } from './kind.ts';

/** How one of its points is struck. */
export const straightAboveOnMetal: RuleKindOnMetal<'straightAbove'> = {
  locus: (ground, { id, point, of }, at) => rayFromOther(ground, id, [point, of], at),
};
