/** Rules as errors of making call them. */
import type { Movement, Rule } from '../../movement/schema.ts';

/** Names of anything that a rule can name. */
function partNames(movement: Movement): (id: string) => string {
  const { arbors, posts, marks, wheels, walls, plates, openings } = movement;
  const parts = [...arbors, ...posts, ...marks, ...wheels, ...walls, ...plates, ...openings];
  const names = new Map<string, string>(parts.map(({ id, name }) => [id, name ?? id]));
  return (id) => names.get(id) ?? id;
}

/** A rule in words: its own name where it has one, else what it asks: "the depth of W1 and P2". */
export function ruleWords(movement: Movement): (rule: Rule) => string {
  const part = partNames(movement);
  const listed = (ids: readonly string[]): string => ids.map(part).join(', ');
  return (rule) => {
    if (rule.name) return `"${rule.name}"`;
    switch (rule.kind) {
      case 'held':
        return `the held place of ${part(rule.point)}`;
      case 'depth':
        return `the depth of ${part(rule.wheels[0])} and ${part(rule.wheels[1])}`;
      case 'distance':
        return `the distance from ${part(rule.points[0])} to ${part(rule.points[1])}`;
      case 'radius':
        return `the radius of ${part(rule.point)} from ${part(rule.centre)}`;
      case 'bearing':
        return `the bearing of ${part(rule.point)} from ${part(rule.centre)}`;
      case 'opposite':
        return `${part(rule.point)} opposite ${part(rule.of)} through ${part(rule.centre)}`;
      case 'samePlace':
        return `the same place of ${part(rule.points[0])} and ${part(rule.points[1])}`;
      case 'inLine':
        return `${part(rule.point)} in line with ${part(rule.through[0])} and ${part(rule.through[1])}`;
      case 'sameRadius':
        return `the same radius of ${listed(rule.points)} from ${part(rule.centre)}`;
      case 'evenSpacing':
        return `the even spacing of ${listed(rule.points)} about ${part(rule.centre)}`;
      case 'clearBy':
        return `the gap of ${part(rule.parts[0])} and ${part(rule.parts[1])}`;
    }
  };
}
