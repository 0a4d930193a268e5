/** A mirror image on the metal: square across the centre line from the other, as far beyond it. */
import { otherOnMetal } from '../centreLineSeen.ts';
import { arcFrom, rayFrom } from '../metalLoci.ts';
import { soundStrike } from '../soundStrike.ts';
import type { RuleKindOnMetal } from './kind.ts';

/** How one of its points is struck. */
export const mirroredOnMetal: RuleKindOnMetal<'mirrored'> = {
  strike: (ground, { id, point, of }, at) => {
    const from = otherOnMetal(ground, [point, of], at);
    if (!from) return undefined;
    return soundStrike('arcAndLine', arcFrom(from, at, id), rayFrom(ground.metal, from, undefined, at, id), at);
  },
};
