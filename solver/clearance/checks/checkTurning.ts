/** What stands in the way of turning, as findings: locked rings, arbors that nothing drives, hands that are wrong. */

import type { PlacedMovement } from '../../planting/placed.ts';
import { type TurningProblem, turnMovement } from '../../train/index.ts';
import type { Finding } from '../findings/finding.ts';

const KINDS: Partial<Record<TurningProblem['kind'], Finding['kind']>> = {
  locked: 'ring',
  depth: 'depth',
  sharedAxis: 'depth',
};

/** The problems of the train, told as findings. A movement that states no drive is only a layout, and has none to tell. */
export function findingsOfTurning(placed: PlacedMovement): readonly Finding[] {
  const { movement } = placed;
  const turning = turnMovement(movement);
  const layoutOnly = movement.drive === undefined && movement.indications.length === 0;
  return turning.problems
    .filter((problem) => !layoutOnly || KINDS[problem.kind] !== undefined)
    .map((problem) => {
      const kind = KINDS[problem.kind] ?? 'turning';
      return {
        key: `${kind} ${problem.kind} ${[...problem.parts].sort().join(' ')}`,
        kind,
        severity: problem.severity,
        parts: problem.parts,
        cause: { kind: 'turning', problem },
      };
    });
}
