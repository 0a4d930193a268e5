/** How one point is struck on the metal: the two loci, chosen from its rules where these give a construction. */

import { offLocus, type Point } from '../../geometry/index.ts';
import type { Rule } from '../../movement/schema.ts';
import { ONE_PLACE } from '../../tolerances.ts';
import type { MarkingStep } from '../marks.ts';
import { bestArcs, settles } from './bestArcs.ts';
import type { MetalLocus } from './metal.ts';
import type { RuleGround } from './metalLoci.ts';
import { datumOffsets, offsetLoci } from './offsets.ts';
import type { Strike } from './ruleKinds/kind.ts';
import { ruleKindOnMetal } from './ruleKinds/ruleKinds.ts';

/**
 * The construction of a settled point at `at`.
 *
 * In this order: its rules' own loci; distances from the datum for a held point; the best two arcs from points on the
 * metal; distances from the datum.
 */
export function strikeOf(ground: RuleGround, rules: readonly Rule[], at: Point): Strike {
  const byRules = strikeByRules(ground, rules, at);
  if (byRules) return byRules;
  const offset = offsetLoci(ground.metal, at);
  const held = rules.some(({ kind }) => ruleKindOnMetal(kind).isByCoordinates);
  if (offset && held) return { kind: 'offset', loci: offset };
  const arcs = bestArcs(ground.metal, at);
  if (arcs && settles(arcs[0], arcs[1], at)) return { kind: 'derivedArcs', loci: arcs };
  return { kind: 'offset', loci: offset ?? datumOffsets(ground.metal, at) };
}

function strikeByRules(ground: RuleGround, rules: readonly Rule[], at: Point): Strike | undefined {
  const loci: MetalLocus[] = [];
  for (const rule of rules) {
    const kind = ruleKindOnMetal(rule.kind);
    const alone = kind.strike?.(ground, rule, at);
    if (alone) return alone;
    const locus = kind.locus?.(ground, rule, at);
    if (locus && Math.abs(offLocus(locus, at)) < ONE_PLACE) loci.push(locus);
  }
  for (const [index, first] of loci.entries()) {
    const second = loci.slice(index + 1).find((each) => settles(first, each, at));
    if (second) return { kind: kindOf(first, second), loci: [first, second] };
  }
  return undefined;
}

function kindOf(first: MetalLocus, second: MetalLocus): MarkingStep['kind'] {
  const lines = [first, second].filter((locus) => locus.kind !== 'circle').length;
  return lines === 0 ? 'arcs' : lines === 1 ? 'arcAndLine' : 'lines';
}
