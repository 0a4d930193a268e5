/** How far every arbor has turned after so many turns of the drive, for drawing: radians, counter-clockwise as seen. */
import { type Turning, toNumber } from '../../solver/gearing/index.ts';
import type { ArborId, Movement } from '../../solver/movement/index.ts';

/** +1 where a turn the drive's way is counter-clockwise as seen from the marked face. */
export function senseOfDrive(turning: Turning): 1 | -1 {
  return turning.drive?.sense === 'anticlockwise' ? 1 : -1;
}

/** Angle of an arbor after `turned` turns of the drive; 0 for one that nothing drives. */
export function turnedAngle(turning: Turning, arbor: ArborId, turned: number): number {
  const rate = turning.arbors.get(arbor)?.rate;
  return rate ? 2 * Math.PI * turned * toNumber(rate.turns) * senseOfDrive(turning) : 0;
}

/** Drawing angles of all wheels: how they stand at rest, and how far they have turned. */
export function turnedPhases(
  rest: ReadonlyMap<string, number>,
  movement: Movement,
  turning: Turning,
  turned: number,
): ReadonlyMap<string, number> {
  if (turned === 0) return rest;
  const angles = new Map(movement.arbors.map(({ id }) => [id, turnedAngle(turning, id, turned)]));
  return new Map(
    movement.wheels.map(({ id, arbor }) => [id as string, (rest.get(id) ?? 0) + (angles.get(arbor) ?? 0)]),
  );
}
