/** The centre line on the metal, and lines that are told from it. */
import { type Point, separation } from '../../geometry/index.ts';
import type { PointId } from '../../movement/ids.ts';
import { centreLineOf } from '../../movement/index.ts';
import { ONE_PLACE } from '../../tolerances.ts';
import { type MetalLocus, type MetalPoint, metalPointAt } from './metal.ts';
import { type RuleGround, rayFrom } from './metalLoci.ts';
import { offsetLoci } from './offsets.ts';

/** The other one of two points, where it is on the metal and elsewhere. */
export function otherOnMetal(ground: RuleGround, points: readonly PointId[], at: Point): MetalPoint | undefined {
  const places = points.map((id) => ground.placeOf(id));
  const other = places.find((place) => place !== undefined && separation(place, at) >= ONE_PLACE);
  return other && metalPointAt(ground.metal, other);
}

/** The line from the other one of two points through the place, told by its angle from the base line. */
export function rayFromOther(
  ground: RuleGround,
  rule: string,
  points: readonly PointId[],
  at: Point,
): MetalLocus | undefined {
  const from = otherOnMetal(ground, points, at);
  return from && rayFrom(ground.metal, from, undefined, at, rule);
}

/** The centre line through a place on it: from a point of it that is on the metal, else at its distance from the datum. */
export function centreLineThrough({ movement, metal }: RuleGround, rule: string, at: Point): MetalLocus | undefined {
  const line = centreLineOf(movement);
  const { see } = metal.view;
  const [through, along] = [see(line.through), see(line.along)];
  const off = (place: Point): number => (place.x - through.x) * along.y - (place.y - through.y) * along.x;
  const from = metal.points.find(
    (point) => separation(point.at, at) >= ONE_PLACE && Math.abs(off(point.at)) < ONE_PLACE,
  );
  if (from) return rayFrom(metal, from, undefined, at, rule);
  return offsetLoci(metal, at)?.find(
    (offset) => offset.kind !== 'circle' && Math.abs(offset.along.x * along.y - offset.along.y * along.x) < PARALLEL,
  );
}

/** Sine of the angle up to which two lines of the drawing are one direction: rounding of unit vectors. */
const PARALLEL = 1e-12;
