/**
 * How far every arbor has turned after so many turns of the drive, for drawing: radians, anticlockwise as seen.
 * Whole turns are taken off in exact fractions, so that a hand stands right after a million turns too.
 */

import type { ArborId } from '../../../solver/movement/ids.ts';
import type { Movement } from '../../../solver/movement/schema.ts';
import type { Turning } from '../../../solver/train/index.ts';
import { multiply, type Rational, toNumber } from '../../../solver/train/turning/rational.ts';

/** +1 where a turn the drive's way is anticlockwise as seen from the marked face. */
export function senseOfDrive(turning: Turning): 1 | -1 {
  return turning.drive?.sense === 'anticlockwise' ? 1 : -1;
}

/** Angle of an arbor past its whole turns, above −2π and below 2π; 0 for one that nothing drives. */
export function turnedAngle(turning: Turning, arbor: ArborId, turned: Rational): number {
  const rate = turning.arbors.get(arbor)?.rate;
  if (!rate) return 0;
  const { n, d } = multiply(rate.turns, turned);
  return 2 * Math.PI * toNumber({ n: n % d, d }) * senseOfDrive(turning);
}

/** Drawing angles of all wheels: how they stand at rest, and how far they have turned. */
export function turnedPhases(
  rest: ReadonlyMap<string, number>,
  movement: Movement,
  turning: Turning,
  turned: Rational,
): ReadonlyMap<string, number> {
  if (turned.n === 0n) return rest;
  const angles = new Map(movement.arbors.map(({ id }) => [id, turnedAngle(turning, id, turned)]));
  return new Map(
    movement.wheels.map(({ id, arbor }) => [id as string, (rest.get(id) ?? 0) + (angles.get(arbor) ?? 0)]),
  );
}
