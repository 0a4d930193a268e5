/**
 * Gaps between all parts that could meet: as planted, with shake, and with the ± of the planting; named and ranked.
 *
 * Two solids are apart when either their gap in plan or their gap in height reaches its limit.
 */
import type { Bounds, XY } from '../geometry/index.ts';
import type { PlacedMovement } from '../planting/index.ts';
import { visitNearPairs } from './broadPhase.ts';
import type { Finding } from './finding.ts';
import { type GapContext, type GapValue, gapContextOf, heightGapOf, shortfallOf, TOUCH } from './gapReadings.ts';
import { lengthWords } from './lengthWords.ts';
import { type PairTerms, pairKey, pairTermsFor } from './pairTerms.ts';
import { boundsOfSolid, planGapOf } from './planGap.ts';
import { type Solid, solidsOf } from './solids.ts';

/** Every pair of solids whose gap is below what it owes; for two parts that meet in several places, the worst. */
export function checkGaps(placed: PlacedMovement): readonly Finding[] {
  const solids = solidsOf(placed);
  const termsOf = pairTermsFor(placed.movement);
  const context = gapContextOf(placed, solids);
  const boxes: Bounds[] = solids.map(boundsOfSolid);
  const { radialGap, wallGap } = placed.movement.limits;
  const worst = new Map<string, Finding>();
  visitNearPairs(boxes, Math.max(radialGap, wallGap) + context.margin, (i, j) => {
    const first = solids[i];
    const second = solids[j];
    if (!first || !second) return;
    const terms = termsOf(first, second);
    const finding = terms && gapFinding(first, second, terms, context);
    if (!finding) return;
    const pair = pairKey(first.part, second.part);
    const known = worst.get(pair);
    if (!known || (finding.gap ?? 0) < (known.gap ?? 0)) worst.set(pair, finding);
  });
  return [...worst.values()];
}

function gapFinding(first: Solid, second: Solid, terms: PairTerms, context: GapContext): Finding | undefined {
  // Apart in height at the worst ends of both end shakes: apart under every reading.
  if (heightGapOf(first, second) - endShakes(first, second, context) >= terms.height - TOUCH) return undefined;
  const plan = planGapOf(first, second);
  if (!plan || plan.gap >= terms.plan + context.margin) return undefined;
  const short = shortfallOf(first, second, plan, terms, context);
  if (!short) return undefined;
  const { value, reading, gaps } = short;
  const fouls = reading.gap < -TOUCH;
  const at = (point: XY): { x: number; y: number } => ({ x: point[0], y: point[1] });
  return {
    key: `${fouls ? 'fouls' : 'tooClose'} ${pairKey(first.part, second.part)}`,
    kind: fouls ? 'fouls' : 'tooClose',
    severity: fouls && value !== 'withPlusMinus' ? 'stops' : 'warns',
    parts: [first.part, second.part],
    gap: reading.gap,
    gaps,
    wanted: reading.wanted,
    value,
    at: [at(plan.a), at(plan.b)],
    says: saysOf(`${first.label} and ${second.label}`, value, reading.gap, reading.wanted, reading.direction),
  };
}

function endShakes(first: Solid, second: Solid, { shake }: GapContext): number {
  return [first, second].reduce((sum, { arbor }) => sum + (arbor === undefined ? 0 : shake.lengthwise(arbor)), 0);
}

const UNDER: Record<GapValue, string> = {
  asPlanted: '',
  withShake: ' with shake',
  withPlusMinus: ' with shake and the ± of the planting',
};

function saysOf(names: string, value: GapValue, gap: number, wanted: number, direction: 'plan' | 'height'): string {
  if (gap < -TOUCH) return `${names} foul by ${lengthWords(-gap)}${UNDER[value]}.`;
  const where = direction === 'height' ? ' in height' : '';
  return `${names}: gap ${lengthWords(gap)}${where}${UNDER[value]}, wanted ${lengthWords(wanted)}.`;
}
