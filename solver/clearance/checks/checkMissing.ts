/** What is not there yet: arbors that nothing bears, and arbors between plates without end shake. */
import type { Arbor, Movement } from '../../movement/schema.ts';
import { TOUCH } from '../../tolerances.ts';
import type { Finding } from '../findings/finding.ts';
import { stackOf } from '../stacks/stackOf.ts';

/** Everything that is wanted before a movement can be made; none of it is a fault of what is there. */
export function checkMissing(movement: Movement): readonly Finding[] {
  return movement.arbors.flatMap((arbor) => [...noBearing(arbor), ...noEndShake(arbor, movement)]);
}

/** A pipe runs on what is inside it; what never turns, or turns with another, is fixed there. */
function noBearing({ id, bearings, ridesOn, turns }: Arbor): Finding[] {
  if (bearings.length > 0 || ridesOn !== undefined || turns === 'never') return [];
  const cause = { kind: 'noBearing', arbor: id } as const;
  return [{ key: `bearing none ${id}`, kind: 'bearing', severity: 'warns', parts: [id], cause }];
}

/** Races may be set without end shake; between two plates anything else is pinched. */
function noEndShake(arbor: Arbor, movement: Movement): Finding[] {
  const { id, endShake, bearings, ridesOn } = arbor;
  const plates = new Set(bearings.flatMap(({ plate }) => plate ?? []));
  if (endShake > TOUCH || ridesOn !== undefined || plates.size < 2) return [];
  if (bearings.some(({ kind }) => kind === 'race')) return [];
  const stack = stackOf(movement, id);
  if (stack.kind !== 'stack') return [];
  const cause = { kind: 'noEndShake', arbor: id } as const;
  return [{ key: `stack ${id}`, kind: 'stack', severity: 'warns', parts: [id], gap: endShake, cause }];
}
