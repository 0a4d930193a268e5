/** Rules that speak of one thing as if it were two, or lack the value they say they use. */
import { type NamedThing, namedIn, type TellFault } from '../ruleKinds/kind.ts';
import { ruleKindInDocument } from '../ruleKinds/ruleKinds.ts';
import type { Movement } from '../schema.ts';
import { axesOf } from './axesOf.ts';
import type { Report } from './fault.ts';

/** Reports what is wrong within each rule. References that lead nowhere are told elsewhere. */
export function checkRules(movement: Movement, report: Report): void {
  const axisOf = axesOf(movement);
  const arborOfWheel = new Map<string, string>(movement.wheels.map((wheel) => [wheel.id, wheel.arbor]));
  const placeOf = (id: string): string => axisOf(arborOfWheel.get(id) ?? id);
  const solid = new Set<string>([...movement.walls, ...movement.plates, ...movement.openings].map((part) => part.id));
  movement.rules.forEach((rule, index) => {
    const tell: TellFault = (keys, rest) => report({ path: ['rules', index, ...keys], id: rule.id, ...rest });
    const kind = ruleKindInDocument(rule.kind);
    const differ = kind.differ?.(rule) ?? [namedIn(rule, Object.keys(kind.names))];
    kind.faults?.(rule, tell);
    for (const [first, second] of repeated(differ, (id) => id)) {
      tell(second.keys, {
        found: `“${second.id}” again, which stands at ${textOf(first.keys)} already`,
        expected: 'another part than that',
        remedy: 'name another part, or remove the rule',
      });
    }
    if (rule.leaveOut) return;
    const apart = kind.apart?.(rule) ?? differ;
    for (const [first, second] of repeated(apart, (id) => (solid.has(id) ? id : placeOf(id)))) {
      if (first.id === second.id) continue;
      tell(second.keys, {
        found: `“${second.id}”, which stands at the same place as “${first.id}”`,
        expected: kind.apartSays ?? 'points at different places',
        remedy: `remove the rule, or what joins the two (a pipe that rides on the other, or a same-place rule)`,
      });
    }
  });
}

/** Pairs within a group that `keyOf` cannot tell apart: each repeat with the first of its kind. */
function repeated(
  groups: readonly (readonly NamedThing[])[],
  keyOf: (id: string) => string,
): [NamedThing, NamedThing][] {
  const pairs: [NamedThing, NamedThing][] = [];
  for (const group of groups) {
    const seen = new Map<string, NamedThing>();
    for (const named of group) {
      const first = seen.get(keyOf(named.id));
      if (first === undefined) seen.set(keyOf(named.id), named);
      else pairs.push([first, named]);
    }
  }
  return pairs;
}

function textOf(keys: readonly (string | number)[]): string {
  return keys.map((key) => (typeof key === 'number' ? `[${key}]` : key)).join('');
}
