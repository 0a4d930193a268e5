/** Rules in the maker's words: the kind, and with what. */

import type { PartId, PointId } from '../../solver/movement/ids.ts';
import type { Movement, Rule } from '../../solver/movement/schema.ts';
import { struckFrom } from '../bench/figures/scribedArcs.ts';

const KINDS: Readonly<Record<Rule['kind'], string>> = {
  held: 'Held',
  depth: 'Depth',
  distance: 'Distance',
  radius: 'Radius',
  bearing: 'Bearing',
  opposite: 'Straight opposite',
  samePlace: 'Same place',
  inLine: 'In line',
  sameRadius: 'Same radius',
  evenSpacing: 'Even spacing',
  clearBy: 'Clear',
};

/** The kind of a rule as a heading. */
export const ruleKindSays = (kind: Rule['kind']): string => KINDS[kind];

/** What follows the kind, as seen from one of its points: "with First intermediate". */
export function ruleWithSays(
  movement: Movement,
  rule: Rule,
  seenFrom: PointId,
  nameOf: (id: string) => string,
): string {
  const from = struckFrom(movement, rule, seenFrom);
  switch (rule.kind) {
    case 'held':
      return 'at its coordinates';
    case 'depth': {
      const own = movement.wheels.find(({ id, arbor }) => rule.wheels.includes(id) && arbor === seenFrom);
      const other = rule.wheels.find((id) => id !== own?.id) ?? rule.wheels[0];
      return `with ${nameOf(other)}`;
    }
    case 'distance':
    case 'radius':
      return from ? `from ${nameOf(from)}` : '';
    case 'bearing':
      return `about ${nameOf(rule.centre)}${rule.reference ? `, from ${nameOf(rule.reference)}` : ''}`;
    case 'opposite':
      return `${nameOf(rule.point === seenFrom ? rule.of : rule.point)} about ${nameOf(rule.centre)}`;
    case 'samePlace':
      return `as ${nameOf(rule.points.find((id) => id !== seenFrom) ?? seenFrom)}`;
    case 'inLine':
      return `with ${nameOf(rule.through[0])} and ${nameOf(rule.through[1])}`;
    case 'sameRadius':
    case 'evenSpacing':
      return `about ${nameOf(rule.centre)}`;
    case 'clearBy': {
      const own = rule.parts.find((part) => part === seenFrom || isOn(movement, part, seenFrom));
      return `of ${nameOf(rule.parts.find((part) => part !== own) ?? rule.parts[0])}`;
    }
  }
}

function isOn(movement: Movement, part: PartId, point: PointId): boolean {
  return movement.wheels.some(({ id, arbor }) => id === part && arbor === point);
}

/** Points that a rule speaks of. */
export function pointsOfRule(movement: Movement, rule: Rule): PointId[] {
  const arbors = arborsOf(movement.wheels);
  const arborOf = (part: string): PointId | undefined => arbors.get(part);
  switch (rule.kind) {
    case 'held':
      return [rule.point];
    case 'depth':
      return rule.wheels.flatMap((wheel) => arborOf(wheel) ?? []);
    case 'distance':
    case 'samePlace':
      return [...rule.points];
    case 'radius':
      return [rule.point, rule.centre];
    case 'bearing':
      return [rule.point, rule.centre, ...(rule.reference ? [rule.reference] : [])];
    case 'opposite':
      return [rule.point, rule.centre, rule.of];
    case 'inLine':
      return [rule.point, ...rule.through];
    case 'sameRadius':
    case 'evenSpacing':
      return [...rule.points, rule.centre];
    case 'clearBy':
      return rule.parts.flatMap((part) => arborOf(part) ?? (part as PointId)); // a part without an arbor is a point or of the case
  }
}

type Wheels = Movement['wheels'];
const known = new WeakMap<Wheels, ReadonlyMap<string, PointId>>();

/** Arbors by wheel id; made once for a list of wheels, because it is asked for every rule. */
function arborsOf(wheels: Wheels): ReadonlyMap<string, PointId> {
  const last = known.get(wheels);
  if (last) return last;
  const arbors = new Map<string, PointId>(wheels.map(({ id, arbor }) => [id, arbor]));
  known.set(wheels, arbors);
  return arbors;
}
