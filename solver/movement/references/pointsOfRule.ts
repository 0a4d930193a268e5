/** Which points a rule speaks of. */
import type { PointId } from '../ids.ts';
import { namedIn } from '../ruleKinds/kind.ts';
import { ruleKindInDocument } from '../ruleKinds/ruleKinds.ts';
import type { Movement, Rule } from '../schema.ts';

/**
 * Points that a rule speaks of, in the order of its fields: a wheel stands for its arbor. A part of the case, which is
 * no point, is given as it is named.
 */
export function pointsOfRule(movement: Movement, rule: Rule): PointId[] {
  const arbors = arborsOf(movement.wheels);
  const { names } = ruleKindInDocument(rule.kind);
  return Object.entries(names).flatMap(([field, to]) =>
    namedIn(rule, [field]).flatMap(({ id }) => {
      const arbor = to.includes('wheels') ? arbors.get(id) : undefined;
      // What may only be a wheel and is none has no point; any other part is a point or of the case.
      return arbor ?? (to.length > 1 ? [id as PointId] : []);
    }),
  );
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
