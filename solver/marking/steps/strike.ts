/** How one point is struck on the metal: the two loci, chosen from its rules where these give a construction. */

import { offLocus, type Point } from '../../geometry/index.ts';
import type { Rule } from '../../movement/schema.ts';
import { ONE_PLACE } from '../../tolerances.ts';
import type { MarkingStep } from '../marks.ts';
import { bestArcs, settles } from './bestArcs.ts';
import { type EdgeLine, insideEdge, type Metal, type MetalLocus } from './metal.ts';
import type { RuleGround } from './metalLoci.ts';
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

/** Two lines at distances from the datum's edges, or from the base line and its square; none with a datum of two points. */
function offsetLoci(metal: Metal, at: Point): readonly [MetalLocus, MetalLocus] | undefined {
  const { datum } = metal;
  if (datum.kind === 'edges') {
    return [edgeOffset(datum.upright, at), edgeOffset(datum.level, at)];
  }
  return datum.kind === 'centre' ? datumOffsets(metal, at) : undefined;
}

/** The line parallel to an edge through a point. */
export function edgeOffset(edge: EdgeLine, at: Point): MetalLocus {
  return {
    kind: 'line',
    through: at,
    along: edge.axis === 'x' ? { x: 0, y: 1 } : { x: 1, y: 0 },
    told: { kind: 'offset', from: edge.name, distance: insideEdge(edge, at) },
  };
}

/** Two lines parallel and square to the base line through a point, told from the datum point. */
export function datumOffsets(metal: Metal, at: Point): readonly [MetalLocus, MetalLocus] {
  const origin =
    metal.datum.kind === 'edges' ? { x: metal.datum.upright.at, y: metal.datum.level.at } : metal.datum.origin;
  const ux = { x: Math.cos(metal.base), y: Math.sin(metal.base) };
  const uy = { x: -ux.y, y: ux.x };
  const dx = at.x - origin.x;
  const dy = at.y - origin.y;
  const line = (way: Point, along: 'x' | 'y', distance: number): MetalLocus => ({
    kind: 'line',
    through: at,
    along: way,
    told: { kind: 'offset', from: 'datum', along, distance },
  });
  return [line(uy, 'x', dx * ux.x + dy * ux.y), line(ux, 'y', dx * uy.x + dy * uy.y)];
}
