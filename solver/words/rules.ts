/**
 * Rules in the maker's words: what a kind is called, and one rule among others ("the depth of Third and Escape").
 *
 * The file calls a direction `bearing`; a maker calls a bearing only what a pivot turns in.
 */

import { arborOfWheel, namer } from '../marking/index.ts';
import type { PointId, RuleId } from '../movement/ids.ts';
import type { Movement, Rule } from '../movement/schema.ts';
import { asSentence, listed } from './lists.ts';

type Kind = Rule['kind'];
/** The rules of one kind. */
type RuleOf<K extends Kind> = Extract<Rule, { readonly kind: K }>;

/** How one kind of rule is spoken of. */
interface RuleWords<K extends Kind> {
  /** As a heading and in a table: "depth". */
  readonly heading: string;
  /** As it is asked for: "a depth". */
  readonly asked: string;
  /** One rule of the kind, without its own name: "the depth of Third and Escape". */
  readonly said: (rule: RuleOf<K>, name: (id: string) => string, movement: Movement) => string;
  /** What follows the heading on the slip of one of its points: "with Escape". */
  readonly seen: (rule: RuleOf<K>, from: PointId, name: (id: string) => string, movement: Movement) => string;
  /** The heading before `seen`, where it is another. */
  readonly short?: string;
}

/** The one of two that is not the point. */
const otherThan = <Id extends string>(ids: readonly [Id, Id], point: string): Id =>
  ids[0] === point ? ids[1] : ids[0];
/** A wheel stands for its arbor. */
const standsOn = (movement: Movement, part: string, point: PointId): boolean =>
  part === point || arborOfWheel(movement, part) === point;

const RULES = {
  held: {
    heading: 'held place',
    asked: 'a held place',
    said: ({ point }, name) => `the held place of ${name(point)}`,
    seen: () => 'at its coordinates',
    short: 'held',
  },
  depth: {
    heading: 'depth',
    asked: 'a depth',
    said: ({ wheels }, name, movement) => {
      const [a, b] = wheels.map((wheel) => name(arborOfWheel(movement, wheel) ?? wheel));
      return `the depth of ${a} and ${b}`;
    },
    seen: ({ wheels: [a, b] }, from, name, movement) => `with ${name(standsOn(movement, a, from) ? b : a)}`,
  },
  distance: {
    heading: 'distance',
    asked: 'a distance',
    said: ({ points }, name) => `the distance from ${name(points[0])} to ${name(points[1])}`,
    seen: ({ points }, from, name) => `from ${name(otherThan(points, from))}`,
  },
  radius: {
    heading: 'radius',
    asked: 'a radius',
    said: ({ point, centre }, name) => `the radius of ${name(point)} from ${name(centre)}`,
    seen: ({ point, centre }, from, name) => `from ${name(otherThan([point, centre], from))}`,
  },
  bearing: {
    heading: 'direction',
    asked: 'a direction',
    said: ({ point, centre }, name) => `the direction of ${name(point)} from ${name(centre)}`,
    seen: ({ centre, reference }, _, name) =>
      `about ${name(centre)}${reference === undefined ? '' : `, from ${name(reference)}`}`,
  },
  opposite: {
    heading: 'straight opposite',
    asked: 'a place straight opposite another',
    said: ({ point, of, centre }, name) => `${name(point)} straight opposite ${name(of)} about ${name(centre)}`,
    seen: ({ point, of, centre }, from, name) => `${name(point === from ? of : point)} about ${name(centre)}`,
  },
  samePlace: {
    heading: 'same place',
    asked: 'the same place as another',
    said: ({ points }, name) => `the same place of ${name(points[0])} and ${name(points[1])}`,
    seen: ({ points }, from, name) => `as ${name(otherThan(points, from))}`,
  },
  inLine: {
    heading: 'in line',
    asked: 'a line through two others',
    said: ({ point, through }, name) => `${name(point)} in line with ${name(through[0])} and ${name(through[1])}`,
    seen: ({ through }, _, name) => `with ${name(through[0])} and ${name(through[1])}`,
  },
  sameRadius: {
    heading: 'same radius',
    asked: 'the same radius as another',
    said: ({ points, centre }, name) => `the same radius of ${listed(points.map(name))} from ${name(centre)}`,
    seen: ({ centre }, _, name) => `about ${name(centre)}`,
  },
  evenSpacing: {
    heading: 'even spacing',
    asked: 'an even spacing',
    said: ({ points, centre }, name) => `the even spacing of ${listed(points.map(name))} about ${name(centre)}`,
    seen: ({ centre }, _, name) => `about ${name(centre)}`,
  },
  clearBy: {
    heading: 'clear by',
    asked: 'a stated gap',
    said: ({ parts }, name) => `the gap of ${name(parts[0])} and ${name(parts[1])}`,
    seen: ({ parts: [a, b] }, from, name, movement) => `of ${name(standsOn(movement, a, from) ? b : a)}`,
    short: 'clear',
  },
} as const satisfies { readonly [K in Kind]: RuleWords<K> };

/** The kind of a rule as a heading: "depth", "direction". */
export function ruleHeading(kind: Kind): string {
  return RULES[kind].heading;
}

/** The kind of a rule as it is asked for: "a depth", "a direction". */
export function ruleAsked(kind: Kind): string {
  return RULES[kind].asked;
}

/** A rule on the slip of one of its points: heading and what follows, "Depth" and "with Escape". */
export function ruleSeen(
  rule: Rule,
  from: PointId,
  { name, movement }: { readonly name: (id: string) => string; readonly movement: Movement },
): { readonly heading: string; readonly rest: string } {
  const { heading, short = heading, seen } = RULES[rule.kind] as RuleWords<Kind>;
  return { heading: asSentence(short), rest: seen(rule as never, from, name, movement) }; // each kind with its own rule
}

/** A rule within a sentence: what it asks, or the maker's own name in quotes. */
export function ruleQuoted(
  ruleId: RuleId,
  { movement, rule }: { movement: Movement; rule: (id: string) => string },
): string {
  const isNamed = movement.rules.some(({ id, name }) => id === ruleId && name?.trim());
  return isNamed ? `"${rule(ruleId)}"` : rule(ruleId);
}

function described(rule: Rule, name: (id: string) => string, movement: Movement): string {
  const { said } = RULES[rule.kind] as RuleWords<Kind>;
  return said(rule as never, name, movement); // the table pairs every kind with its own rule
}

const known = new WeakMap<Movement, ReadonlyMap<string, string>>();

/**
 * Words for every rule by id: the maker's name, else what it asks. Rules with the same words say which wheels they mean,
 * and where that does not tell them apart their id in brackets.
 */
export function ruleNamesOf(movement: Movement): ReadonlyMap<string, string> {
  const last = known.get(movement);
  if (last) return last;
  const name = namer(movement);
  const words = movement.rules.map((rule) => rule.name?.trim() || described(rule, name, movement));
  const counts = new Map<string, number>();
  const count = (each: string): void => void counts.set(each, (counts.get(each) ?? 0) + 1);
  words.forEach(count);
  const finer = movement.rules.map((rule, at) => {
    const own = words[at] ?? '';
    if ((counts.get(own) ?? 0) < 2) return own;
    return rule.kind === 'depth' ? `the depth of ${name(rule.wheels[0])} and ${name(rule.wheels[1])}` : own;
  });
  counts.clear();
  finer.forEach(count);
  const names = new Map(
    movement.rules.map(({ id }, at) => {
      const own = finer[at] ?? id;
      return [id, (counts.get(own) ?? 0) > 1 ? `${own} (${id})` : own] as const;
    }),
  );
  known.set(movement, names);
  return names;
}
