/**
 * Rules that cannot hold together, told with a number that would cure it.
 *
 * Two arcs that do not reach are told by their gap and the lengths that would reach. Any other set is told by what one of
 * its rules would measure if the rest were planted without it: found by planting again, only when somebody asks.
 */

import type { PointId, RuleId } from '../../movement/ids.ts';
import { numberOfRule } from '../../movement/index.ts';
import type { Movement, Rule } from '../../movement/schema.ts';
import { HOLDS, ONE_PLACE } from '../../tolerances.ts';
import type {
  CheckOver,
  Disagreement,
  DisagreementCause,
  ImpliedRule,
  LengthCure,
  LocusTold,
  SetFails,
} from '../disagreement.ts';
import { plantNetwork } from '../kernel/plant.ts';
import type { NetworkResult } from '../network.ts';
import { checkOutcome } from './checksOver.ts';
import { lengthBeyond } from './lengthBeyond.ts';
import { networkOf } from './networkOf.ts';
import type { PlacementIndex } from './placementIndex.ts';
import { type Miss, missOf } from './reach.ts';
import type { RuleValue } from './ruleKinds/kind.ts';
import { ruleKindInPlanting } from './ruleKinds/ruleKinds.ts';
import { standingRules } from './ruleOutcomes.ts';
import { ruleValueAt } from './ruleValue.ts';

/** Sets larger than this are named without planting again for a cure: each trial plants the whole movement. */
const LARGEST_CURED = 12;

/** What is needed to tell a disagreement. */
interface Teller {
  readonly index: PlacementIndex;
  readonly movement: Movement;
  readonly rules: ReadonlyMap<RuleId, Rule>;
  readonly standing: ReadonlySet<RuleId>;
}

/** All disagreements, those of rules that cannot be asked at all last. */
export function toldDisagreements(index: PlacementIndex): readonly Disagreement[] {
  const { movement, unusable } = index.ground;
  const teller: Teller = {
    index,
    movement,
    rules: new Map(movement.rules.map((rule) => [rule.id, rule])),
    standing: standingRules(movement),
  };
  const told = setsOf(index).map((each) =>
    each.isDegenerate ? tellDegenerate(teller, each.rules, each.gap) : tellSet(teller, each.rules, each.gap),
  );
  const broken = unusable.map(({ rule, points, why, lacking }): Disagreement => {
    return { rules: [rule], points, gap: lacking, cause: { kind: 'notKept', why } };
  });
  return [...told, ...movement.rules.flatMap((rule) => tellOver(teller, rule) ?? []), ...broken];
}

/** A rule that only checks, where it misses by more than it may. */
function tellOver({ index, movement, standing }: Teller, rule: Rule): Disagreement | undefined {
  if (rule.leaveOut || standing.has(rule.id)) return undefined;
  const outcome = checkOutcome(index, rule);
  if (!outcome || outcome.missBy <= outcome.allowed) return undefined;
  // What a hole leaves is a tie: the rules behind it are no part of it.
  const against = index.result.checks[outcome.worst] ? index.result.against(outcome.worst) : [];
  const rules = [rule.id, ...against.flatMap((each) => index.ruleIdOf(each) ?? [])];
  const points = index.pointsOfRule(outcome.worst).flatMap((point) => index.ground.pointIds[point] ?? []);
  const value = hasNumber(rule) ? ruleValueAt(movement, (id) => placeIn(index, id), rule) : undefined;
  const kind = value?.kind === 'angle' ? 'angle' : 'length';
  const measures: CheckOver['measures'] = value && value.kind !== 'off' ? { kind, value: value.value } : undefined;
  return {
    rules: [...new Set(rules)],
    points,
    gap: outcome.missBy,
    cause: {
      kind: 'over',
      check: rule.id,
      allowed: outcome.allowed,
      implied: impliedOf(index, against),
      ...(measures ? { measures } : {}),
    },
    ...(measures && canBe(rule, measures.value) ? { cure: { rule: rule.id, value: measures.value } } : {}),
  };
}

function placeIn({ ground, result }: PlacementIndex, id: PointId): { x: number; y: number } | undefined {
  const point = ground.indexOf.get(id);
  return point === undefined ? undefined : { x: result.coords[2 * point] ?? 0, y: result.coords[2 * point + 1] ?? 0 };
}

/** May the number of a rule be this one? */
function canBe(rule: Rule, value: number): boolean {
  return value >= (numberOfRule(rule)?.least ?? Number.NEGATIVE_INFINITY);
}

/** Sets of network rules, those of the same movement rules as one: a held place is two rules, its gap has two parts. */
function setsOf(index: PlacementIndex): NetworkResult['disagreements'] {
  const sets = new Map<string, { rules: number[]; gap: number; isDegenerate?: boolean }>();
  for (const { rules, gap, isDegenerate } of index.result.disagreements) {
    const names = rules.map((rule) => index.ruleIdOf(rule) ?? `implied ${rule}`);
    const key = [...new Set(names)].sort().join(' ');
    const known = sets.get(key);
    if (known) sets.set(key, { rules: [...known.rules, ...rules], gap: Math.hypot(known.gap, gap) });
    else sets.set(key, { rules: [...rules], gap, ...(isDegenerate ? { isDegenerate } : {}) });
  }
  return [...sets.values()];
}

/** Rules that would bring a point onto the one that a direction, a line or a radius of theirs is named from. */
function tellDegenerate({ index }: Teller, networkRules: readonly number[], gap: number): Disagreement {
  const indices = [...new Set(networkRules.flatMap((rule) => index.pointsOfRule(rule)))];
  return {
    rules: [...new Set(networkRules.flatMap((rule) => index.ruleIdOf(rule) ?? []))],
    points: indices.flatMap((point) => index.ground.pointIds[point] ?? []),
    gap,
    cause: { kind: 'degenerate', implied: impliedOf(index, networkRules) },
  };
}

function tellSet(teller: Teller, networkRules: readonly number[], gap: number): Disagreement {
  const { index } = teller;
  const rules = [...new Set(networkRules.flatMap((rule) => index.ruleIdOf(rule) ?? []))];
  const indices = [...new Set(networkRules.flatMap((rule) => index.pointsOfRule(rule)))];
  const points = indices.flatMap((point) => index.ground.pointIds[point] ?? []);
  // Two loci that miss come first, then the rules that hold their centres.
  const [first, second, third] = networkRules;
  if (first !== undefined && second !== undefined) {
    const miss = missOf(index.ground.network, index.result.coords, [first, second]);
    if (miss && (third === undefined || Math.abs(miss.gap - gap) < ONE_PLACE * (1 + gap))) {
      return { rules, points, gap: miss.gap, ...tellMiss(teller, [first, second], miss) };
    }
  }
  const cause = { kind: 'set', implied: impliedOf(index, networkRules), fixed: fixedOf(index, indices) } as const;
  const found = rules.length <= LARGEST_CURED ? valueThatCures(teller, rules) : undefined;
  if (!found) return { rules, points, gap, cause };
  const told = { rules, points, gap, cause: { ...cause, without: found } };
  return found.kind === 'onePlace' ? told : { ...told, cure: { rule: found.rule, value: found.value } };
}

/** Two arcs, or an arc and a line, that do not meet. */
function tellMiss(teller: Teller, rules: readonly [number, number], miss: Miss): Pick<Disagreement, 'cause' | 'cure'> {
  const { index } = teller;
  const point = index.ground.pointIds[miss.point];
  const [from] = index.pointsOfRule(rules[0]).filter((each) => each !== miss.point);
  const centre = index.ground.pointIds[from ?? -1];
  const cures = lengthCures(teller, miss);
  const cause: DisagreementCause = {
    kind: 'miss',
    how: miss.kind,
    ...(point === undefined ? {} : { point }),
    ...(centre === undefined ? {} : { centre }),
    loci: [locusOf(teller, rules[0], miss.point), locusOf(teller, rules[1], miss.point)],
    cures,
  };
  const [best] = cures;
  return best ? { cause, cure: { rule: best.rule, value: best.length } } : { cause };
}

/** Lengths that a maker can enter as they are printed, and that are no less than a rule of their kind can be. */
function lengthCures({ index, movement, rules }: Teller, miss: Miss): readonly LengthCure[] {
  return miss.cures.flatMap((cure): LengthCure[] => {
    const ruleId = index.ruleIdOf(cure.rule);
    const rule = ruleId === undefined ? undefined : rules.get(ruleId);
    const number = rule && numberOfRule(rule);
    if (ruleId === undefined || !rule || !number) return [];
    // The gap of two outlines changes as their centre distance does.
    const value = number.measures === 'gap' ? (number.value ?? 0) + cure.length - cure.radius : cure.length;
    const length = cure.bound === 'exactly' ? value : lengthBeyond(value, movement.display, cure.bound);
    if (!canBe(rule, length)) return [];
    const [networkRule = -1] = index.ground.networkRulesOf.get(rule.id) ?? [];
    const from = otherPoint(index, networkRule, miss.point);
    return [{ rule: ruleId, bound: cure.bound, length, ...(from === undefined ? {} : { from }) }];
  });
}

function locusOf({ index, rules }: Teller, networkRule: number, point: number): LocusTold {
  const id = index.ruleIdOf(networkRule);
  const rule = id === undefined ? undefined : rules.get(id);
  const told = rule && ruleKindInPlanting(rule.kind).told?.(rule);
  if (told) return told;
  const from = otherPoint(index, networkRule, point);
  return from === undefined ? { kind: 'edge' } : { kind: 'arc', from };
}

function otherPoint(index: PlacementIndex, networkRule: number, point: number): PointId | undefined {
  const others = index.pointsOfRule(networkRule).filter((each) => each !== point);
  return index.ground.pointIds[others.at(-1) ?? -1];
}

function impliedOf(index: PlacementIndex, networkRules: readonly number[]): readonly ImpliedRule[] {
  return networkRules.flatMap((rule): ImpliedRule[] => {
    const source = index.ground.sources[rule];
    if (source?.kind === 'pipe') return [{ kind: 'pipe', point: source.arbor }];
    if (source?.kind === 'slide') return [{ kind: 'slide', point: source.post }];
    return source?.kind === 'drilled' ? [{ kind: 'drilled', point: source.point }] : [];
  });
}

/** Points of the set that cannot give way. */
function fixedOf(index: PlacementIndex, indices: readonly number[]): SetFails['fixed'] {
  return indices.flatMap((each) => {
    const point = index.ground.pointIds[each];
    const held = index.ground.heldBy.get(each);
    return point === undefined || !held ? [] : [{ point, by: held.by === 'drilled' ? 'drilled' : 'held' } as const];
  });
}

/** The first rule whose own number could give way, with what it would be: the last added is tried first. */
function valueThatCures({ movement }: Teller, rules: readonly RuleId[]): SetFails['without'] {
  for (const rule of movement.rules.filter(({ id }) => rules.includes(id)).reverse()) {
    if (!hasNumber(rule)) continue;
    const found = valueWithout(movement, rule, rules);
    if (!found) continue;
    const isAngle = found.kind === 'angle';
    if (found.kind === 'length' && !canBe(rule, found.value)) {
      if (rules.length === 1) return { kind: 'onePlace' };
      continue;
    }
    return { kind: isAngle ? 'angle' : 'length', rule: rule.id, value: found.value };
  }
  return undefined;
}

const hasNumber = (rule: Rule): boolean => numberOfRule(rule) !== undefined;

/** What a rule measures when the movement is planted without it; undefined where the others then still disagree. */
function valueWithout(movement: Movement, rule: Rule, set: readonly RuleId[]): RuleValue | undefined {
  const ground = networkOf({
    ...movement,
    rules: movement.rules.map((each) => (each.id === rule.id ? { ...each, leaveOut: true } : each)),
  });
  const { coords, missBy } = plantNetwork(ground.network);
  for (const id of set) {
    for (const each of ground.networkRulesOf.get(id) ?? []) {
      if (Math.abs(missBy[each] ?? 0) > HOLDS) return undefined;
    }
  }
  const placeOf = (id: PointId) => {
    const point = ground.indexOf.get(id);
    return point === undefined ? undefined : { x: coords[2 * point] ?? 0, y: coords[2 * point + 1] ?? 0 };
  };
  return ruleValueAt(movement, placeOf, rule);
}
