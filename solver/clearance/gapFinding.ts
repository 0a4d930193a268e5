/** One pair of solids held against what it owes: the finding in words, or none. */
import type { XY } from '../geometry/index.ts';
import type { Finding } from './finding.ts';
import { type GapContext, type GapValue, heightGapOf, shortfallOf, TOUCH } from './gapReadings.ts';
import { lengthWords } from './lengthWords.ts';
import { type PairTerms, pairKey } from './pairTerms.ts';
import { planGapOf } from './planGap.ts';
import type { Solid } from './solid.ts';

/** What falls short between two solids under the first reading that does. */
export function gapFinding(first: Solid, second: Solid, terms: PairTerms, context: GapContext): Finding | undefined {
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
