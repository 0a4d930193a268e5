/** What marking out has to know of one kind of rule. Each kind is one file here; `ruleKinds.ts` joins them. */
import type { Point } from '../../../geometry/index.ts';
import type { KindOfRule, RuleOf } from '../../../movement/schema.ts';
import type { MarkingStep } from '../../marks.ts';
import type { MetalLocus } from '../metal.ts';
import type { RuleGround } from '../metalLoci.ts';

/** The chosen loci and what kind of step they make. */
export interface Strike {
  readonly kind: MarkingStep['kind'];
  readonly loci: readonly MetalLocus[];
}

/** One kind of rule in marking out. */
export interface RuleKindOnMetal<K extends KindOfRule> {
  /** A locus for the point at a place; undefined where the metal does not yet hold what it needs. */
  readonly locus?: (ground: RuleGround, rule: RuleOf<K>, at: Point) => MetalLocus | undefined;
  /** Two loci where a rule settles a point by itself, once its other points are there. */
  readonly strike?: (ground: RuleGround, rule: RuleOf<K>, at: Point) => Strike | undefined;
  /** The point is given by its coordinates, so distances from the datum strike it best. */
  readonly isByCoordinates?: true;
}
