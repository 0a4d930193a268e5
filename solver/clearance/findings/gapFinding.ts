/** One pair of solids held against what it owes: the finding, or none. */

import { type Point, pointAtAngle } from '../../geometry/index.ts';
import { TOUCH } from '../../tolerances.ts';
import { type GapContext, heightGapOf, lengthwiseOfPair, shortfallOf } from '../gaps/gapReadings.ts';
import { type PairTerms, pairKey } from '../gaps/pairTerms.ts';
import { type PlanGap, planGapOf } from '../gaps/planGap.ts';
import { pieceOf } from '../solids/piece.ts';
import type { Solid } from '../solids/solid.ts';
import type { Finding } from './finding.ts';

/** What falls short between two solids under the first reading that does. */
export function gapFinding(first: Solid, second: Solid, terms: PairTerms, context: GapContext): Finding | undefined {
  // Apart in height at the worst ends of both end shakes: apart under every reading.
  if (heightGapOf(first, second) - lengthwiseOfPair(first, second, context) >= terms.height - TOUCH) return undefined;
  const plan = planGapOf(first, second);
  if (!plan || plan.gap >= terms.plan + context.margin) return undefined;
  const short = shortfallOf(first, second, plan, terms, context);
  if (!short) return undefined;
  const { value, reading, gaps } = short;
  const fouls = reading.gap < -TOUCH;
  const at = (point: Point): { x: number; y: number } => ({ x: point.x, y: point.y });
  const [a, b] = reading.direction === 'height' && fouls ? oneAbove(first, second, plan) : [plan.a, plan.b];
  return {
    key: `${fouls ? 'fouls' : 'tooClose'} ${pairKey(first.part, second.part)}`,
    kind: fouls ? 'fouls' : 'tooClose',
    severity: fouls && value !== 'withPlusMinus' ? 'stops' : 'warns',
    parts: [first.part, second.part],
    gap: reading.gap,
    gaps,
    wanted: reading.wanted,
    value,
    ...(reading.wayOut === undefined ? {} : { wayOut: reading.wayOut }),
    ...(reading.sideways === undefined ? {} : { sideways: reading.sideways }),
    at: [at(a), at(b)],
    cause: { kind: 'gap', pieces: [pieceOf(first), pieceOf(second)], direction: reading.direction },
  };
}

/**
 * Where to look at two that share a height and stand over each other: the middle of what they share in plan; of a ring
 * within the other, its rim, on the side away from the other's axis.
 */
function oneAbove(first: Solid, second: Solid, plan: PlanGap): readonly [Point, Point] {
  const middle: Point = { x: (plan.a.x + plan.b.x) / 2, y: (plan.a.y + plan.b.y) / 2 };
  if (first.shape !== 'ring' || second.shape !== 'ring') return [middle, middle];
  const [large, small] = first.outer >= second.outer ? [first, second] : [second, first];
  const [dx, dy] = [small.centre.x - large.centre.x, small.centre.y - large.centre.y];
  const d = Math.hypot(dx, dy);
  if (d + small.outer > large.outer) return [middle, middle];
  const rim = pointAtAngle(small.centre, small.outer, Math.atan2(dy, dx));
  return [rim, rim];
}
