/** A depth on the metal: an arc about the other arbor. */
import { arcBetween } from '../metalLoci.ts';
import type { RuleKindOnMetal } from './kind.ts';

/** How one of its points is struck. */
export const depthOnMetal: RuleKindOnMetal<'depth'> = {
  locus: (ground, { id, wheels }, at) =>
    arcBetween(
      ground,
      id,
      wheels.map((wheel) => ground.arborOfWheel.get(wheel)),
      at,
    ),
};
