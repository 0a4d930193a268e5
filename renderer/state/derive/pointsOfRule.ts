/** Which points a rule speaks of. */
import type { PointId } from '../../../solver/movement/ids.ts';
import type { Movement, Rule } from '../../../solver/movement/schema.ts';

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
