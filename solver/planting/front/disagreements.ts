/**
 * Rules that cannot hold together, told with a number that would cure it.
 *
 * Two arcs that do not reach are told by their gap and the lengths that would reach. Any other set is told by what one of
 * its rules would measure if the rest were planted without it: found by planting again, only when somebody asks.
 */

import type { PointId, RuleId } from '../../movement/ids.ts';
import { numberOfRule } from '../../movement/index.ts';
import type { Movement, Rule } from '../../movement/schema.ts';
import { ONE_PLACE } from '../../tolerances.ts';
import type { Disagreement, DisagreementCause, LengthCure, LocusTold, SetFails } from '../disagreement.ts';
import type { NetworkResult } from '../network.ts';
import { CureTrial, canBe } from './cureTrial.ts';
import { failingRules } from './failing.ts';
import { impliedBy } from './implied.ts';
import { lengthBeyond } from './lengthBeyond.ts';
import { oversTold } from './oversTold.ts';
import type { PlacementIndex } from './placementIndex.ts';
import { type Miss, missOf } from './reach.ts';
import { ruleKindInPlanting } from './ruleKinds/ruleKinds.ts';

/** What is needed to tell a disagreement. */
interface Teller {
  readonly index: PlacementIndex;
  readonly movement: Movement;
  readonly rules: ReadonlyMap<RuleId, Rule>;
  readonly trial: CureTrial;
}

/** All disagreements, those of rules that cannot be asked at all last. */
export function toldDisagreements(index: PlacementIndex): readonly Disagreement[] {
  const { movement, unusable } = index.ground;
  const teller: Teller = {
    index,
    movement,
    rules: new Map(movement.rules.map((rule) => [rule.id, rule])),
    trial: new CureTrial(index),
  };
  const told = setsOf(index).map((each) =>
    each.isDegenerate ? tellDegenerate(teller, each.rules, each.gap) : tellSet(teller, each.rules, each.gap),
  );
  const broken = unusable.map(({ rule, points, why, lacking }): Disagreement => {
    return { rules: [rule], points, gap: lacking, cause: { kind: 'notKept', why } };
  });
  return [...told, ...oversTold(index), ...broken];
}

/** Sets of network rules, those of the same movement rules as one: a held place is two rules, its gap has two parts. */
function setsOf(index: PlacementIndex): NetworkResult['disagreements'] {
  const sets = new Map<string, { rules: number[]; gap: number; isDegenerate?: boolean }>();
  for (const { rules, gap, isDegenerate } of index.result.disagreements) {
    const names = rules.map((rule) => index.ruleIdOf(rule) ?? impliedName(index, rule));
    const key = [...new Set(names)].sort().join(' ');
    const known = sets.get(key);
    if (known) sets.set(key, { rules: [...known.rules, ...rules], gap: Math.hypot(known.gap, gap) });
    else sets.set(key, { rules: [...rules], gap, ...(isDegenerate ? { isDegenerate } : {}) });
  }
  return [...sets.values()];
}

/** A second drilled place is asked in two parts, like a held one. */
function impliedName({ ground }: PlacementIndex, rule: number): string {
  const source = ground.sources[rule];
  return source?.kind === 'drilled' ? `drilled ${source.point}` : `implied ${rule}`;
}

/** Rules that would bring a point onto the one that a direction, a line or a radius of theirs is named from. */
function tellDegenerate({ index }: Teller, networkRules: readonly number[], gap: number): Disagreement {
  const indices = [...new Set(networkRules.flatMap((rule) => index.pointsOfRule(rule)))];
  return {
    rules: [...new Set(networkRules.flatMap((rule) => index.ruleIdOf(rule) ?? []))],
    points: indices.flatMap((point) => index.ground.pointIds[point] ?? []),
    gap,
    cause: { kind: 'degenerate', implied: impliedBy(index, networkRules) },
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
      return { rules, points, gap: miss.gap, ...tellMiss(teller, networkRules, miss) };
    }
  }
  const cause = { kind: 'set', implied: impliedBy(index, networkRules), fixed: fixedOf(index, indices) } as const;
  const found = valueThatCures(teller, networkRules);
  if (!found) return { rules, points, gap, cause };
  const told = { rules, points, gap, cause: { ...cause, without: found } };
  return found.kind === 'onePlace' ? told : { ...told, cure: { rule: found.rule, value: found.value } };
}

/** How far beyond a bound is tried as well, mm: what hangs on a point that only just meets may then fall short itself. */
const BEYOND = [0, 0.05, 0.25, 1, 3, 8];

/** Two arcs, or an arc and a line, that do not meet. */
function tellMiss(teller: Teller, networkRules: readonly number[], miss: Miss): Pick<Disagreement, 'cause' | 'cure'> {
  const { index, trial } = teller;
  const [a = -1, b = -1] = networkRules;
  const point = index.ground.pointIds[miss.point];
  const [from] = index.pointsOfRule(a).filter((each) => each !== miss.point);
  const centre = index.ground.pointIds[from ?? -1];
  const cures = lengthCures(teller, miss);
  const cause: DisagreementCause = {
    kind: 'miss',
    how: miss.kind,
    ...(point === undefined ? {} : { point }),
    ...(centre === undefined ? {} : { centre }),
    loci: [locusOf(teller, a, miss.point), locusOf(teller, b, miss.point)],
    cures,
  };
  const candidates = BEYOND.flatMap((more) =>
    cures.flatMap(({ rule: id, bound, length }): Candidate[] => {
      const rule = teller.rules.get(id);
      const part = rule && trial.partOf(rule);
      const number = bound === 'atMost' ? length - more : length + more;
      if (!rule || part === undefined || (bound === 'exactly' && more > 0) || !canBe(rule, number)) return [];
      return [{ rule, part, number }];
    }),
  );
  const best = bestOf(teller, networkRules, candidates);
  if (best) return { cause, cure: { rule: best.rule.id, value: best.number } };
  const other = valueThatCures(teller, networkRules);
  return other && other.kind !== 'onePlace' ? { cause, cure: { rule: other.rule, value: other.value } } : { cause };
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

/** Points of the set that cannot give way. */
function fixedOf(index: PlacementIndex, indices: readonly number[]): SetFails['fixed'] {
  return indices.flatMap((each) => {
    const point = index.ground.pointIds[each];
    const held = index.ground.heldBy.get(each);
    return point === undefined || !held ? [] : [{ point, by: held.by === 'drilled' ? 'drilled' : 'held' } as const];
  });
}

/** The first rule whose own number could give way, with what it would be: the last added is tried first. */
function valueThatCures(teller: Teller, networkRules: readonly number[]): SetFails['without'] {
  const { index, trial } = teller;
  const own = new Set(networkRules.flatMap((each) => index.ruleIdOf(each) ?? []));
  const candidates: Candidate[] = [];
  const numbered = teller.movement.rules.filter((rule) => own.has(rule.id)).reverse();
  for (const rule of numbered) {
    const part = trial.partOf(rule);
    const value = part === undefined ? undefined : trial.measuredWithout(part, networkRules);
    if (part === undefined || value === undefined) continue;
    const number = trial.numberOf(rule, part, value);
    if (canBe(rule, number)) candidates.push({ rule, part, number });
    else if (own.size === 1) return { kind: 'onePlace' };
    if (candidates.length >= MOST_CANDIDATES) break;
  }
  const best = bestOf(teller, networkRules, candidates);
  return (
    best && {
      kind: numberOfRule(best.rule)?.measures === 'angle' ? 'angle' : 'length',
      rule: best.rule.id,
      value: best.number,
    }
  );
}

/** A number that may cure a set. */
interface Candidate {
  readonly rule: Rule;
  readonly part: number;
  readonly number: number;
}

/** Numbers of different rules that are tried for one set: each is planted twice. */
const MOST_CANDIDATES = 12;

/** Of numbers that were planted, the first that leaves the fewest rules failing: none of the set, and none that held before. */
function bestOf(
  { index, trial }: Teller,
  networkRules: readonly number[],
  candidates: readonly Candidate[],
): Candidate | undefined {
  const before = new Set(failingRules(index));
  let best: Candidate | undefined;
  let fewest = Number.POSITIVE_INFINITY;
  for (const candidate of candidates) {
    const { rule, part, number } = candidate;
    const failing = trial.failingWith(part, trial.valueFor(rule, part, number));
    if (!failing || failing.length >= fewest) continue;
    if (failing.some((r) => networkRules.includes(r) || (!before.has(r) && !index.result.checks[r]))) continue;
    best = candidate;
    fewest = failing.length;
    if (fewest === 0) break;
  }
  return best;
}
