/** Whole movements moved, turned, mirrored, or listed in another order: planting must go along. */
import type { Movement, Rule } from '../../solver/movement/schema.ts';
import { randomFrom, type XY } from './randomMovement.ts';

export interface Change {
  readonly angleDeg: number;
  readonly by: XY;
  /** Mirrored in the y axis first. */
  readonly mirror: boolean;
}

/** Where a place goes. */
export function changedPlace({ angleDeg, by, mirror }: Change, [x, y]: XY): XY {
  const [c, s] = [Math.cos((angleDeg * Math.PI) / 180), Math.sin((angleDeg * Math.PI) / 180)];
  const mx = mirror ? -x : x;
  return [by[0] + c * mx - s * y, by[1] + s * mx + c * y];
}

/** The movement with all its coordinates, directions and senses changed (points, rules and made places only). */
export function changedMovement(movement: Movement, change: Change): Movement {
  const sense = change.mirror ? -1 : 1;
  const crossing = <T extends { crossing?: Movement['arbors'][number]['crossing'] }>(point: T): T => {
    const side = point.crossing?.side;
    if (!point.crossing || !change.mirror || (side !== 'left' && side !== 'right')) return point;
    return { ...point, crossing: { ...point.crossing, side: side === 'left' ? 'right' : 'left' } };
  };
  const moved = <T extends { at: XY; crossing?: Movement['arbors'][number]['crossing'] }>(point: T): T => ({
    ...crossing(point),
    at: changedPlace(change, point.at),
  });
  return {
    ...movement,
    arbors: movement.arbors.map(moved),
    posts: movement.posts.map(moved),
    marks: movement.marks.map(moved),
    made: movement.made.map((made) => (made.at ? { ...made, at: changedPlace(change, made.at) } : made)),
    rules: movement.rules.map((rule): Rule => {
      if (rule.kind === 'held') return { ...rule, at: changedPlace(change, rule.at) };
      if (rule.kind === 'bearing') {
        const turned = rule.reference === undefined ? change.angleDeg + (change.mirror ? 180 : 0) : 0;
        return { ...rule, angle: sense * rule.angle + turned };
      }
      const [first, ...others] = rule.kind === 'evenSpacing' ? rule.points : [];
      if (rule.kind === 'evenSpacing' && first && change.mirror) {
        return { ...rule, points: [first, ...others.reverse()] };
      }
      return rule;
    }),
  };
}

/** Arbors, marks, wheels and rules in another order. */
export function shuffled(movement: Movement, seed: number): Movement {
  const random = randomFrom(seed);
  const mixed = <T>(list: readonly T[]): T[] =>
    list
      .map((item) => ({ item, key: random() }))
      .sort((a, b) => a.key - b.key)
      .map(({ item }) => item);
  return {
    ...movement,
    arbors: mixed(movement.arbors),
    posts: mixed(movement.posts),
    marks: mixed(movement.marks),
    wheels: mixed(movement.wheels),
    rules: mixed(movement.rules),
  };
}
