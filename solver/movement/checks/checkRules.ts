/** Rules that speak of one thing as if it were two, or lack the value they say they use. */
import type { Movement, Rule } from '../schema.ts';
import { axesOf } from './axesOf.ts';
import type { Fault, Report } from './fault.ts';

/** A thing named by a rule: where in the rule, its id, and the point whose place it has. */
interface Named {
  readonly keys: readonly (string | number)[];
  readonly id: string;
}

/** Reports what is wrong within each rule. References that lead nowhere are told elsewhere. */
export function checkRules(movement: Movement, report: Report): void {
  const axisOf = axesOf(movement);
  const arborOfWheel = new Map<string, string>(movement.wheels.map((wheel) => [wheel.id, wheel.arbor]));
  const placeOf = (id: string): string => axisOf(arborOfWheel.get(id) ?? id);
  const solid = new Set<string>([...movement.walls, ...movement.plates, ...movement.openings].map((part) => part.id));
  movement.rules.forEach((rule, index) => {
    const tell = (keys: readonly (string | number)[], rest: Omit<Fault, 'path' | 'id'>): void =>
      report({ path: ['rules', index, ...keys], id: rule.id, ...rest });
    checkDepth(rule, tell);
    checkDuty(rule, tell);
    for (const [first, second] of repeated(groupsOf(rule), (id) => id)) {
      tell(second.keys, {
        found: `“${second.id}” again, which stands at ${textOf(first.keys)} already`,
        expected: 'another part than that',
        remedy: 'name another part, or remove the rule',
      });
    }
    if (rule.kind === 'samePlace' || rule.leaveOut) return;
    for (const [first, second] of repeated(groupsOf(rule, true), (id) => (solid.has(id) ? id : placeOf(id)))) {
      if (first.id === second.id) continue;
      tell(second.keys, {
        found: `“${second.id}”, which stands at the same place as “${first.id}”`,
        expected: apartWords(rule),
        remedy: `remove the rule, or what joins the two (a pipe that rides on the other, or a same-place rule)`,
      });
    }
  });
}

function checkDepth(rule: Rule, tell: (keys: readonly string[], rest: Omit<Fault, 'path' | 'id'>) => void): void {
  if (rule.kind !== 'depth' || rule.use === 'calculated') return;
  const missing = rule.use === 'measured' ? rule.measured === undefined : rule.held === undefined;
  if (!missing) return;
  tell(['use'], {
    found: `“${rule.use}” without a ${rule.use} value`,
    expected: rule.use === 'measured' ? '“measured” with a “value” in mm' : '“held” with a length in mm',
    remedy: `enter the ${rule.use} distance, or write “calculated”`,
  });
}

/** What stands at one place is one point: nothing is left of it that could check. */
function checkDuty(rule: Rule, tell: (keys: readonly string[], rest: Omit<Fault, 'path' | 'id'>) => void): void {
  if (rule.kind !== 'samePlace' || rule.duty === undefined) return;
  tell(['duty'], {
    found: `“${rule.duty}” of a same-place rule`,
    expected: 'no duty: what it joins cannot differ',
    remedy: 'remove “duty”, or leave the rule out',
  });
}

/**
 * Groups of parts that must differ within a rule. With `apart`, only those that must also stand at different places:
 * a distance of nothing, or a direction between two points at one place, says nothing.
 */
function groupsOf(rule: Rule, apart = false): readonly (readonly Named[])[] {
  const one = (field: string, id: string): Named => ({ keys: [field], id });
  const list = (field: string, ids: readonly string[]): Named[] => ids.map((id, i) => ({ keys: [field, i], id }));
  switch (rule.kind) {
    case 'held':
      return [];
    case 'depth':
      return [list('wheels', rule.wheels)];
    case 'distance':
    case 'samePlace':
      return [list('points', rule.points)];
    case 'radius':
      return [[one('point', rule.point), one('centre', rule.centre)]];
    case 'bearing':
      return [
        [
          one('point', rule.point),
          one('centre', rule.centre),
          ...(rule.reference === undefined ? [] : [one('reference', rule.reference)]),
        ],
      ];
    case 'opposite':
      return [[one('point', rule.point), one('centre', rule.centre), one('of', rule.of)]];
    case 'inLine':
      return [apart ? list('through', rule.through) : [one('point', rule.point), ...list('through', rule.through)]];
    case 'sameRadius':
      // Two points at one place have the same radius; a point on the centre has none.
      return apart
        ? list('points', rule.points).map((point) => [one('centre', rule.centre), point])
        : [[one('centre', rule.centre), ...list('points', rule.points)]];
    case 'evenSpacing':
      return [[one('centre', rule.centre), ...list('points', rule.points)]];
    case 'clearBy':
      return [list('parts', rule.parts)];
  }
}

/** Pairs within a group that `keyOf` cannot tell apart: each repeat with the first of its kind. */
function repeated(groups: readonly (readonly Named[])[], keyOf: (id: string) => string): [Named, Named][] {
  const pairs: [Named, Named][] = [];
  for (const group of groups) {
    const seen = new Map<string, Named>();
    for (const named of group) {
      const first = seen.get(keyOf(named.id));
      if (first === undefined) seen.set(keyOf(named.id), named);
      else pairs.push([first, named]);
    }
  }
  return pairs;
}

function apartWords(rule: Rule): string {
  if (rule.kind === 'depth') return 'two wheels on different axes';
  if (rule.kind === 'distance' || rule.kind === 'radius') return 'two points with a distance between them';
  return 'points at different places';
}

function textOf(keys: readonly (string | number)[]): string {
  return keys.map((key) => (typeof key === 'number' ? `[${key}]` : key)).join('');
}
