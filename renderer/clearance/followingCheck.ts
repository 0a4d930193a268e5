/** Findings that follow a drag: the check is kept, and only what moved is asked again. */
import { createChecker, type Finding, type MovementChecker } from '../../solver/clearance/index.ts';
import type { PlacedMovement } from '../../solver/planting/index.ts';

/** Wheels beyond which the findings wait until a drag is over: a snap that adds a rule has the whole train asked again. */
const MOST_FOLLOWED = 200;

/** A check that goes on from the last placing it was asked about; of a large movement, not while it is dragged. */
export function followingCheck(): (placed: PlacedMovement, dragged: boolean) => readonly Finding[] {
  let checker: MovementChecker | undefined;
  return (placed, dragged) => {
    if (checker && dragged && placed.movement.wheels.length > MOST_FOLLOWED) return checker.findings;
    checker = checker ? checker.moved(placed) : createChecker(placed);
    return checker.findings;
  };
}
