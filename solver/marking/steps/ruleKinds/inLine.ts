/** A line on the metal through two others. */
import { lineThrough } from '../metalLoci.ts';
import type { RuleKindOnMetal } from './kind.ts';

/** How one of its points is struck. */
export const inLineOnMetal: RuleKindOnMetal<'inLine'> = {
  locus: (ground, { id, point, through }, at) => lineThrough(ground, id, [point, ...through], at),
};
