/** A direction on the metal: a ray from the centre. */
import type { Point } from '../../../geometry/index.ts';
import type { RuleOf } from '../../../movement/schema.ts';
import { type MetalLocus, metalPointAt } from '../metal.ts';
import { type RuleGround, rayFrom } from '../metalLoci.ts';
import type { RuleKindOnMetal } from './kind.ts';

/** How one of its points is struck. */
export const bearingOnMetal: RuleKindOnMetal<'bearing'> = {
  locus: rayOfDirection,
};

/** Seen from its centre; where the point is the centre itself, dividers serve better and no ray is given. */
function rayOfDirection(ground: RuleGround, rule: RuleOf<'bearing'>, at: Point): MetalLocus | undefined {
  const centre = ground.placeOf(rule.centre);
  const from = centre && metalPointAt(ground.metal, centre);
  if (!from) return undefined;
  if (rule.reference === undefined) return rayFrom(ground.metal, from, undefined, at, rule.id);
  const target = ground.placeOf(rule.reference);
  const reference = target && metalPointAt(ground.metal, target);
  return reference ? rayFrom(ground.metal, from, reference, at, rule.id) : undefined;
}
