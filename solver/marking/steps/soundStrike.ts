/** Two loci of a rule that settles a point by itself. */
import { offLocus, type Point } from '../../geometry/index.ts';
import { ONE_PLACE } from '../../tolerances.ts';
import { settles } from './bestArcs.ts';
import type { MetalLocus } from './metal.ts';
import type { Strike } from './ruleKinds/kind.ts';

/** The strike by two loci, where both are there, run through the place and cross well enough. */
export function soundStrike(
  kind: Strike['kind'],
  first: MetalLocus | undefined,
  second: MetalLocus | undefined,
  at: Point,
): Strike | undefined {
  if (!first || !second) return undefined;
  const holds = [first, second].every((locus) => Math.abs(offLocus(locus, at)) < ONE_PLACE);
  return holds && settles(first, second, at) ? { kind, loci: [first, second] } : undefined;
}
