/**
 * Rules that only check, judged where the others put the points: how far each is from holding, and what it may miss by.
 *
 * A check that is over stops: it is told with the rules that it cannot hold with, for it may be the innocent one.
 */
import type { Rule } from '../../movement/schema.ts';
import { RuleKind } from '../network.ts';
import type { PlacementIndex } from './placementIndex.ts';

/** What a check may miss by where nothing is stated, mm; the second where a hole takes part. Common practice of careful hand work. */
const UNSTATED = 0.02;
const UNSTATED_MADE = 0.05;
/** A direction is judged across its arm, but never finer or coarser than these, radians. */
const FINEST_DIRECTION = (0.01 * Math.PI) / 180;
const COARSEST_DIRECTION = (0.5 * Math.PI) / 180;

/** One check as it came out, mm. */
export interface CheckOutcome {
  /** How far the rule is from holding, at its worst part. */
  readonly missBy: number;
  /** How far it may be. */
  readonly allowed: number;
  /** The network rule that is worst. */
  readonly worst: number;
}

/**
 * How a rule that checks came out.
 *
 * @returns undefined for a rule of which some part places, or that asks nothing
 */
export function checkOutcome(index: PlacementIndex, rule: Rule): CheckOutcome | undefined {
  const own = index.ground.networkRulesOf.get(rule.id) ?? [];
  let found = leftPattern(index, own);
  if (!found && !own.some((r) => index.result.checks[r])) return undefined;
  for (const worst of own) {
    if (!index.result.checks[worst]) continue;
    const missBy = missOf(index, rule, own, worst);
    const allowed = allowedFor(index, worst);
    if (!found || missBy - allowed > found.missBy - found.allowed) found = { missBy, allowed, worst };
  }
  return found;
}

/** A drilled point that a tie names stands off the place that the tie gives it, which its ghost keeps. */
function leftPattern({ ground, result }: PlacementIndex, own: readonly number[]): CheckOutcome | undefined {
  const { network, made } = ground;
  if (!made) return undefined;
  let found: CheckOutcome | undefined;
  for (const [point, ghost] of made.ghostOf) {
    const worst = own.find((r) => isTie(network.kinds[r]) && network.points.subarray(4 * r, 4 * r + 4).includes(ghost));
    if (worst === undefined) continue;
    const at = (i: number): readonly [number, number] => [result.coords[2 * i] ?? 0, result.coords[2 * i + 1] ?? 0];
    const [[x, y], [gx, gy]] = [at(point), at(ghost)];
    const missBy = Math.hypot(x - gx, y - gy);
    const allowed = ground.plusMinus[worst] || UNSTATED_MADE;
    if (!found || missBy - allowed > found.missBy - found.allowed) found = { missBy, allowed, worst };
  }
  return found;
}

const isTie = (kind: number | undefined): boolean => (kind ?? 0) >= RuleKind.samePlace;

/** A place is asked in two parts, and misses by both together; a wanted gap only where it is narrower. */
function missOf(index: PlacementIndex, rule: Rule, own: readonly number[], worst: number): number {
  const side = index.ground.gapSides.get(worst);
  if (side) return shortfall(index, worst, side);
  if (rule.kind === 'held') return Math.hypot(...own.map((each) => index.result.missBy[each] ?? 0));
  return index.result.missBy[worst] ?? 0;
}

/** A wanted gap may be wider than asked: what counts is how much it is narrower. */
function shortfall(index: PlacementIndex, rule: number, side: 'inside' | 'outside'): number {
  const { points, values, kinds } = index.ground.network;
  const { coords } = index.result;
  const at = (k: number): number => points[4 * rule + k] ?? -1;
  const x = (point: number): number => coords[2 * point] ?? 0;
  const y = (point: number): number => coords[2 * point + 1] ?? 0;
  const value = (k: number): number => values[3 * rule + k] ?? 0;
  if (kinds[rule] === RuleKind.onLine) {
    const p = at(0);
    const off = value(0) * x(p) + value(1) * y(p) - value(2);
    return Math.max(0, -off);
  }
  if (kinds[rule] !== RuleKind.distance) return index.result.missBy[rule] ?? 0;
  const apart = Math.hypot(x(at(0)) - x(at(1)), y(at(0)) - y(at(1)));
  return side === 'inside' ? Math.max(0, apart - value(0)) : Math.max(0, value(0) - apart);
}

function allowedFor(index: PlacementIndex, rule: number): number {
  const { network, plusMinus, made } = index.ground;
  // A depth is judged by the window of its teeth, with shake and run-out: not here, where no teeth are known.
  if (index.isDepth(rule)) return Number.POSITIVE_INFINITY;
  const stated = plusMinus[rule] ?? 0;
  const isMade = made !== undefined && index.pointsOfRule(rule).some((point) => made.facts.has(point));
  const unstated = isMade ? UNSTATED_MADE : UNSTATED;
  if (network.kinds[rule] !== RuleKind.ray) return stated > 0 ? stated : unstated;
  const [p, a] = [network.points[4 * rule] ?? 0, network.points[4 * rule + 1] ?? 0];
  const { coords } = index.result;
  const at = (k: number): number => coords[k] ?? 0;
  const arm = Math.hypot(at(2 * p) - at(2 * a), at(2 * p + 1) - at(2 * a + 1));
  // The ± of a direction is an angle; across its arm it is a length, as all misses are.
  if (stated > 0) return stated * arm;
  return Math.min(Math.max(unstated, FINEST_DIRECTION * arm), COARSEST_DIRECTION * arm);
}
