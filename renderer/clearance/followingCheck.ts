/** Findings that follow a drag: the check is kept, and only what moved is asked again. */
import { createChecker, type Finding, type MovementChecker } from '../../solver/clearance/index.ts';
import type { PlacedMovement } from '../../solver/planting/index.ts';

/** A check that goes on from the last placing it was asked about. */
export function followingCheck(): (placed: PlacedMovement) => readonly Finding[] {
  let checker: MovementChecker | undefined;
  return (placed) => {
    checker = checker ? checker.moved(placed) : createChecker(placed);
    return checker.findings;
  };
}
