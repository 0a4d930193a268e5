/**
 * Numbers tried on the network before they are offered: a rule with another value, or measured without it.
 *
 * Duties stay as they are in a trial with another number; where a rule is left out, the checks may step in for it.
 */
import { numberOfRule } from '../../movement/index.ts';
import type { Rule } from '../../movement/schema.ts';
import { HOLDS } from '../../tolerances.ts';
import { plantNetwork } from '../kernel/plant.ts';
import { residualOf, wrapAngle } from '../kernel/residual.ts';
import { type Network, type NetworkResult, RuleKind } from '../network.ts';
import { failingRules } from './failing.ts';
import { PlacementIndex } from './placementIndex.ts';

const DEGREES = 180 / Math.PI;

/** May the number of a rule be this one? */
export function canBe(rule: Rule, value: number): boolean {
  return value >= (numberOfRule(rule)?.least ?? Number.NEGATIVE_INFINITY);
}

/** Is it a rule with one number of its own? */
export const hasNumber = (rule: Rule): boolean => numberOfRule(rule) !== undefined;

/** Trials on one planted movement. */
export class CureTrial {
  readonly #index: PlacementIndex;

  constructor(index: PlacementIndex) {
    this.#index = index;
  }

  /** The network rule that has the number of a rule; undefined where there is none, or more than one. */
  partOf(rule: Rule): number | undefined {
    const own = this.#index.ground.networkRulesOf.get(rule.id) ?? [];
    const [part] = own;
    if (!hasNumber(rule) || own.length !== 1 || part === undefined) return undefined;
    const kind = this.#index.ground.network.kinds[part];
    return kind === RuleKind.distance || kind === RuleKind.ray || kind === RuleKind.onLine ? part : undefined;
  }

  /** What the rule's number would be, mm or degrees, for a value of its network rule. */
  numberOf(rule: Rule, part: number, value: number): number {
    const number = numberOfRule(rule);
    if (number?.measures === 'angle') return (((value * DEGREES) % 360) + 360) % 360;
    if (number?.measures !== 'gap') return value;
    const now = this.#valueOf(part);
    return (number.value ?? 0) + (this.#index.ground.gapSides.get(part) === 'inside' ? now - value : value - now);
  }

  /** The way back. */
  valueFor(rule: Rule, part: number, number: number): number {
    const known = numberOfRule(rule);
    if (known?.measures === 'angle') return number / DEGREES;
    if (known?.measures !== 'gap') return number;
    const more = number - (known.value ?? 0);
    return this.#valueOf(part) + (this.#index.ground.gapSides.get(part) === 'inside' ? -more : more);
  }

  /** Rules that fail with another value of a network rule; undefined where points are loose then. */
  failingWith(part: number, value: number): readonly number[] | undefined {
    const { ground, result } = this.#index;
    const values = Float64Array.from(ground.network.values);
    values[3 * part + this.#at(part)] = value;
    const tried = plantNetwork({ ...ground.network, values, checks: result.checks });
    if (tried.freeMotions > result.freeMotions) return undefined;
    return failingRules(new PlacementIndex({ ...ground, network: { ...ground.network, values } }, tried));
  }

  /**
   * What a network rule would measure if it only checked.
   *
   * @param instead a check that then places in its stead; without one any check may step in
   * @returns undefined where the other rules of the set do not hold without it
   */
  measuredWithout(part: number, set: readonly number[], instead?: number): number | undefined {
    const { ground, result } = this.#index;
    const tried = plantNetwork(withoutRule(ground.network, result, part, instead, ground.made !== undefined));
    const others = set.filter((r) => r !== part);
    if (others.some((r) => (tried.missBy[r] ?? 0) > HOLDS)) return undefined;
    const { kinds, points, values } = ground.network;
    const off = residualOf(kinds[part] ?? 0, points, 4 * part, values, 3 * part, tried.coords);
    if (kinds[part] !== RuleKind.ray) return this.#valueOf(part) + off;
    const at = (k: number): number => tried.coords[k] ?? 0;
    const [p, a] = [points[4 * part] ?? 0, points[4 * part + 1] ?? 0];
    const arm = Math.hypot(at(2 * p) - at(2 * a), at(2 * p + 1) - at(2 * a + 1));
    return arm > 0 ? wrapAngle(this.#valueOf(part) + off / arm) : undefined;
  }

  #valueOf(part: number): number {
    return this.#index.ground.network.values[3 * part + this.#at(part)] ?? 0;
  }

  /** Where the number of a network rule stands among its three values. */
  #at(part: number): number {
    return this.#index.ground.network.kinds[part] === RuleKind.onLine ? 2 : 0;
  }
}

/** A network of which one rule only checks. */
function withoutRule(
  network: Network,
  { checks: duties }: NetworkResult,
  part: number,
  instead: number | undefined,
  isMade: boolean,
): Network {
  if (instead === undefined && !isMade) {
    const told = Uint8Array.from(network.told ?? new Uint8Array(network.ruleCount));
    told[part] = 1;
    return { ...network, told };
  }
  const checks = Uint8Array.from(duties);
  checks[part] = 1;
  if (instead !== undefined) checks[instead] = 0;
  return { ...network, checks };
}
