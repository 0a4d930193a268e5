/**
 * Rules in the maker's words: what a kind is called, and one rule among others ("the depth of Third and Escape").
 * Each kind is a file in `ruleKinds/`.
 */

import { namer } from '../marking/index.ts';
import type { PointId, RuleId } from '../movement/ids.ts';
import type { KindOfRule, Movement, Rule } from '../movement/schema.ts';
import { asSentence } from './lists.ts';
import { ruleKindInWords } from './ruleKinds/ruleKinds.ts';

/** The kind of a rule as a heading: "depth", "direction". */
export function ruleHeading(kind: KindOfRule): string {
  return ruleKindInWords(kind).heading;
}

/** The kind of a rule as it is asked for: "a depth", "a direction". */
export function ruleAsked(kind: KindOfRule): string {
  return ruleKindInWords(kind).asked;
}

/** A rule on the slip of one of its points: heading and what follows, "Depth" and "with Escape". */
export function ruleSeen(
  rule: Rule,
  from: PointId,
  { name, movement }: { readonly name: (id: string) => string; readonly movement: Movement },
): { readonly heading: string; readonly rest: string } {
  const { heading, short = heading, seen } = ruleKindInWords(rule.kind);
  return { heading: asSentence(short), rest: seen(rule, from, name, movement) };
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
  const { said } = ruleKindInWords(rule.kind);
  return said(rule, name, movement);
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
    return ruleKindInWords(rule.kind).finer?.(rule, name) ?? own;
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
