/** Cures of what only shake brings too near: an arbor that runs in one short bearing gets a longer collar. */
import type { PlacedMovement } from '../../planting/placed.ts';
import { CURE_STEP } from '../../tolerances.ts';
import type { Finding } from '../findings/finding.ts';
import type { Candidate } from './candidate.ts';

/** How much longer the bearing is tried, the least first; three times as long is as much as a stud bears. */
const LONGER = [1.25, 1.5, 2, 3];

/** A longer bearing for each arbor of the finding that has but one: the lean shrinks as it grows. */
export function longerBearingCandidates({ movement }: PlacedMovement, finding: Finding): Candidate[] {
  const isOfShake = finding.value === 'withShake' || finding.cause.kind === 'underShake';
  if (!isOfShake) return [];
  const { parts } = finding;
  const onWheels = movement.wheels.filter(({ id }) => parts.includes(id)).map(({ arbor }) => arbor);
  return movement.arbors.flatMap((arbor): Candidate[] => {
    const [bearing, ...more] = arbor.bearings;
    if (!bearing || more.length > 0 || !(parts.includes(arbor.id) || onWheels.includes(arbor.id))) return [];
    return LONGER.map((times) => {
      const length = Math.ceil((bearing.length * times) / CURE_STEP) * CURE_STEP;
      return {
        deed: { kind: 'lengthenBearing', arbor: arbor.id, length },
        edit: { kind: 'change', id: arbor.id, set: { bearings: [{ ...bearing, length }] } },
      };
    });
  });
}
