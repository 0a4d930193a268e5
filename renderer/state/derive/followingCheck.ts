/** Findings that follow a drag: the check is kept, and only what moved is asked again. Of large movements a worker tells them. */
import { createChecker, type Finding, type MovementChecker, type Remedy } from '../../../solver/clearance/index.ts';
import type { Movement } from '../../../solver/movement/schema.ts';
import type { PlacedMovement } from '../../../solver/planting/placed.ts';

/** Wheels beyond which the check would hold the window up: their findings come from the worker, when nothing moves. */
export const MOST_FOLLOWED = 200;

/** A remedy that was tried out: what it does, and the change. */
export type TriedCure = Pick<Remedy, 'deed' | 'edit' | 'gapAfter'>;

/** What the worker found of a movement, with the cures of the first findings once they are tried. */
export interface Checked {
  readonly movement: Movement;
  readonly findings: readonly Finding[];
  readonly cures: ReadonlyMap<string, readonly TriedCure[]>;
}

/** Whether a movement has too many wheels for its findings to follow a drag. */
export const isLarge = (movement: Movement): boolean => movement.wheels.length > MOST_FOLLOWED;

/** A check that goes on from the last placing it was asked about; `undefined` of a large movement. */
export function followingCheck(): (placed: PlacedMovement) => readonly Finding[] | undefined {
  let checker: MovementChecker | undefined;
  return (placed) => {
    if (isLarge(placed.movement)) {
      checker = undefined;
      return undefined;
    }
    checker = checker ? checker.moved(placed) : createChecker(placed);
    return checker.findings;
  };
}

/**
 * The findings to show: the worker's where it has looked at just this movement and nothing is moving, else those that
 * follow the drag; of a large movement what was known last, of parts that are still there.
 */
export function findingsToShow(
  checked: Checked | undefined,
  followed: readonly Finding[] | undefined,
  { movement, moving, names }: { movement: Movement; moving: boolean; names: ReadonlyMap<string, string> },
): readonly Finding[] {
  if (checked?.movement === movement && !moving) return checked.findings;
  return followed ?? (checked?.findings ?? []).filter(({ parts }) => parts.every((part) => names.has(part)));
}
