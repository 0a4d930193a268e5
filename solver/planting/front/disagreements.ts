/**
 * Rules that cannot hold together, told in the maker's words with a number that would cure it.
 *
 * Two arcs that do not reach are told by their gap and the lengths that would reach. Any other set is told by what one of
 * its rules would measure if the rest were planted without it: found by planting again, only when somebody asks.
 */

import type { PointId, RuleId } from '../../movement/ids.ts';
import { MIN_LENGTH } from '../../movement/index.ts';
import type { Movement, Rule } from '../../movement/schema.ts';
import { plantNetwork } from '../kernel/plant.ts';
import type { NetworkResult } from '../network.ts';
import type { Disagreement } from '../placed.ts';
import { networkOf } from './networkOf.ts';
import type { PlacementIndex } from './placementIndex.ts';
import { type Miss, missOf } from './reach.ts';
import { type RuleValue, ruleValueAt } from './ruleValue.ts';
import { joined, lengthBeyond, lengthWords, pointNames, ruleWords } from './words.ts';

/** A rule that holds to this is no part of a disagreement, mm: the planting's proof. */
const HOLDS = 1e-9;
/** Gaps of one miss, told two ways, differ by rounding alone. */
const SAME_GAP = 1e-6;
/** Sets larger than this are named without planting again for a cure: each trial plants the whole movement. */
const LARGEST_CURED = 12;

/** What is needed to tell a disagreement. */
interface Teller {
  readonly index: PlacementIndex;
  readonly movement: Movement;
  readonly rules: ReadonlyMap<RuleId, Rule>;
  readonly point: (id: PointId) => string;
  readonly rule: (rule: Rule) => string;
}

/** All disagreements, those of rules that cannot be asked at all last. */
export function disagreementsOf(index: PlacementIndex): readonly Disagreement[] {
  const { movement, unusable } = index.ground;
  const teller: Teller = {
    index,
    movement,
    rules: new Map(movement.rules.map((rule) => [rule.id, rule])),
    point: pointNames(movement),
    rule: ruleWords(movement),
  };
  const told = setsOf(index).map((each) =>
    each.isDegenerate ? tellDegenerate(teller, each.rules, each.gap) : tellSet(teller, each.rules, each.gap),
  );
  const broken = unusable.map(({ rule, points, says, lacking }): Disagreement => {
    const named = teller.rules.get(rule);
    return {
      rules: [rule],
      points,
      gap: lacking,
      says: `${capital(named ? teller.rule(named) : rule)} is not kept: ${says}.`,
    };
  });
  return [...told, ...broken];
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
function tellDegenerate(teller: Teller, networkRules: readonly number[], gap: number): Disagreement {
  const { index } = teller;
  const rules = [...new Set(networkRules.flatMap((rule) => index.ruleIdOf(rule) ?? []))];
  const indices = [...new Set(networkRules.flatMap((rule) => index.pointsOfRule(rule)))];
  const named = [
    ...rules.flatMap((id) => teller.rules.get(id) ?? []).map(teller.rule),
    ...impliedWords(teller, networkRules),
  ];
  return {
    rules,
    points: indices.flatMap((point) => index.ground.pointIds[point] ?? []),
    gap,
    says:
      `${capital(joined(named))} hold only where two points fall together, and there a direction or a line through ` +
      'them has no meaning. Give a length from the point it is named from, or leave one out.',
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
    if (miss && (third === undefined || Math.abs(miss.gap - gap) < SAME_GAP * (1 + gap))) {
      return { rules, points, gap: miss.gap, ...tellMiss(teller, [first, second], miss) };
    }
  }
  const named = [
    ...rules.flatMap((id) => teller.rules.get(id) ?? []).map(teller.rule),
    ...impliedWords(teller, networkRules),
  ];
  const fixed = fixedWords(teller, indices);
  const missing = `by ${lengthWords(gap, teller.movement.display)}`;
  const says =
    named.length === 1
      ? `${capital(named.join(''))} cannot hold${fixed}: it misses ${missing}.`
      : `${capital(joined(named))} cannot all hold${fixed}: they miss ${missing}.`;
  const cure = rules.length <= LARGEST_CURED ? cureOf(teller, rules) : undefined;
  return cure ? { rules, points, gap, ...cure, says: `${says} ${cure.says}` } : { rules, points, gap, says };
}

/** Two arcs, or an arc and a line, that do not meet. */
function tellMiss(teller: Teller, rules: readonly [number, number], miss: Miss): Pick<Disagreement, 'says' | 'cure'> {
  const { index, movement } = teller;
  const id = index.ground.pointIds[miss.point];
  const point = id === undefined ? 'the point' : teller.point(id);
  const by = lengthWords(miss.gap, movement.display);
  const origin = rules.map((rule) => locusWords(teller, rule, miss.point));
  const both = joined(origin);
  const [from] = index.pointsOfRule(rules[0]).filter((each) => each !== miss.point);
  const centre = index.ground.pointIds[from ?? -1];
  const says: Record<Miss['kind'], string> = {
    apart: `${capital(both)} to ${point} miss by ${by}.`,
    inside: `${capital(both)} to ${point} miss by ${by}: one lies inside the other.`,
    concentric: `Two rules want ${point} at different lengths${centre === undefined ? '' : ` from ${teller.point(centre)}`}, ${by} apart.`,
    lineOutside: `${capital(both)} for ${point} miss by ${by}.`,
    behind: `${capital(both)} for ${point} miss by ${by}: they would meet only behind the ray's start.`,
    parallel: `${capital(both)} for ${point} never meet: they are parallel, ${by} apart.`,
  };
  const cures = miss.cures.flatMap((cure) => {
    const ruleId = index.ruleIdOf(cure.rule);
    const rule = ruleId === undefined ? undefined : teller.rules.get(ruleId);
    if (ruleId === undefined || !rule || !hasNumber(rule)) return [];
    // The gap of two outlines changes as their centre distance does.
    const value = rule.kind === 'clearBy' ? rule.gap + cure.length - cure.radius : cure.length;
    const reaches = cure.bound === 'exactly' ? value : lengthBeyond(value, movement.display, cure.bound);
    const least = rule.kind === 'clearBy' ? 0 : MIN_LENGTH;
    return reaches < least ? [] : [{ bound: cure.bound, ruleId, rule, value: reaches }];
  });
  const [best] = cures;
  if (!best) return { says: says[miss.kind] };
  const cure = { rule: best.ruleId, value: best.value };
  if (best.bound === 'exactly') {
    const length = lengthWords(best.value, movement.display);
    return { says: `${says[miss.kind]} With ${length}, ${teller.rule(best.rule)} would hold; or leave one out.`, cure };
  }
  const options = cures.map(({ bound, rule, value }) => {
    const words = bound === 'atLeast' ? 'at least' : 'at most';
    const length = lengthWords(value, movement.display);
    const where = cures.length > 1 ? ` ${centreWords(teller, rule.id, miss.point)}` : '';
    return `a ${lengthNoun(rule)} of ${words} ${length}${where}`;
  });
  return { says: `${says[miss.kind]} ${capital(joined(options, 'or'))} would reach.`, cure };
}

function lengthNoun(rule: Rule): string {
  if (rule.kind === 'depth' || rule.kind === 'radius' || rule.kind === 'distance') return rule.kind;
  return rule.kind === 'clearBy' ? 'gap' : 'radius';
}

/** "the arc from A", "the line through B and C". */
function locusWords(teller: Teller, networkRule: number, point: number): string {
  const { index } = teller;
  const id = index.ruleIdOf(networkRule);
  const rule = id === undefined ? undefined : teller.rules.get(id);
  if (rule?.kind === 'inLine') return `the line through ${joined(rule.through.map(teller.point))}`;
  if (rule?.kind === 'bearing') return `the ray from ${teller.point(rule.centre)}`;
  if (rule?.kind === 'clearBy') return teller.rule(rule);
  const from = otherPoint(teller, networkRule, point);
  return from === undefined ? 'the line' : `the arc from ${from}`;
}

function centreWords(teller: Teller, rule: RuleId, point: number): string {
  const [networkRule] = teller.index.ground.networkRulesOf.get(rule) ?? [];
  const from = networkRule === undefined ? undefined : otherPoint(teller, networkRule, point);
  return from === undefined ? 'there' : `from ${from}`;
}

function otherPoint({ index, point: name }: Teller, networkRule: number, point: number): string | undefined {
  const others = index.pointsOfRule(networkRule).filter((each) => each !== point);
  const id = index.ground.pointIds[others.at(-1) ?? -1];
  return id === undefined ? undefined : name(id);
}

function impliedWords({ index, point }: Teller, networkRules: readonly number[]): string[] {
  return networkRules.flatMap((rule) => {
    const source = index.ground.sources[rule];
    if (source?.kind === 'pipe') return [`the pipe ${point(source.arbor)} on its arbor`];
    if (source?.kind === 'slide') return [`the sliding radius of ${point(source.post)}`];
    if (source?.kind === 'drilled') return [`the second drilled place of ${point(source.point)}`];
    return [];
  });
}

/** ", with A drilled and B held": why points of the set cannot give way. */
function fixedWords({ index, point }: Teller, indices: readonly number[]): string {
  const words = indices.flatMap((each) => {
    const id = index.ground.pointIds[each];
    const held = index.ground.heldBy.get(each);
    return id === undefined || !held ? [] : [`${point(id)} ${held.by === 'drilled' ? 'drilled' : 'held'}`];
  });
  return words.length === 0 ? '' : `, with ${joined(words)}`;
}

/** The first rule whose own number could give way, with what it would be: the last added is tried first. */
function cureOf(
  teller: Teller,
  rules: readonly RuleId[],
): { readonly says: string; readonly cure?: NonNullable<Disagreement['cure']> } | undefined {
  const { movement } = teller;
  for (const rule of movement.rules.filter(({ id }) => rules.includes(id)).reverse()) {
    if (!hasNumber(rule)) continue;
    const value = valueWithout(movement, rule, rules);
    if (!value) continue;
    if (value.kind !== 'angle' && rule.kind !== 'clearBy' && value.value < MIN_LENGTH) {
      if (rules.length === 1) return { says: 'The two stand at one place: no length between them would hold.' };
      continue;
    }
    const words = value.kind === 'angle' ? `${value.value.toFixed(4)}°` : lengthWords(value.value, movement.display);
    return { says: `With ${words}, ${teller.rule(rule)} would hold.`, cure: { rule: rule.id, value: value.value } };
  }
  return undefined;
}

const hasNumber = ({ kind }: Rule): boolean =>
  kind === 'depth' || kind === 'distance' || kind === 'radius' || kind === 'clearBy' || kind === 'bearing';

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

const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);
