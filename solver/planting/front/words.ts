/** Lengths, points and rules as the planting says them. */

import type { PointId } from '../../movement/ids.ts';
import type { Movement, Rule } from '../../movement/schema.ts';

const MM_PER_INCH = 25.4; // exact by definition
/** Digits given to a length that would be nothing at the display's own decimals. */
const SMALL_DECIMALS = 9;

/** A length in the display's unit, with its name: "31.270 mm". */
export function lengthWords(mm: number, { unit, decimals }: Movement['display']): string {
  const value = unit === 'inch' ? mm / MM_PER_INCH : mm;
  const isSmall = value !== 0 && Math.abs(value) < 0.5 * 10 ** -decimals;
  const text = value.toFixed(isSmall ? SMALL_DECIMALS : decimals);
  return `${Number(text) === 0 ? text.replace('-', '') : text} ${unit === 'inch' ? 'in' : 'mm'}`;
}

/**
 * A length, mm, that a maker can enter as it is printed and that really crosses: the limit itself would only touch, and a
 * point where two loci touch is not settled. It lies beyond the limit by half a last place to one and a half.
 */
export function lengthBeyond(
  limit: number,
  { unit, decimals }: Movement['display'],
  way: 'atLeast' | 'atMost',
): number {
  const size = (unit === 'inch' ? MM_PER_INCH : 1) / 10 ** decimals;
  // A millionth of the last place is rounding of the sum, not a reason to go on.
  const places = limit / size;
  return size * (way === 'atLeast' ? Math.floor(places + 0.5 + 1e-6) + 1 : Math.ceil(places - 0.5 - 1e-6) - 1);
}

/** Names of points: the given name, else the id. */
export function pointNames(movement: Movement): (id: PointId) => string {
  const names = new Map<PointId, string>();
  for (const { id, name } of [...movement.arbors, ...movement.posts, ...movement.marks]) names.set(id, name ?? id);
  return (id) => names.get(id) ?? id;
}

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

/** "a", "a and b", "a, b and c". */
export function joined(words: readonly string[], last = 'and'): string {
  if (words.length < 2) return words.join('');
  return `${words.slice(0, -1).join(', ')} ${last} ${words.at(-1)}`;
}
