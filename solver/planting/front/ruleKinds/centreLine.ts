/** Directions and loci of rules that are told from the centre line of the movement. */
import type { Point } from '../../../geometry/index.ts';
import type { PointId } from '../../../movement/ids.ts';
import { centreLineOf } from '../../../movement/index.ts';
import type { Movement } from '../../../movement/schema.ts';
import type { Measured, StruckLocus } from './kind.ts';

/** The line, the unit vector to the right of it, and how far it lies from the origin that way, mm. */
export function acrossCentreLine(movement: Movement): {
  readonly along: Point;
  readonly across: Point;
  readonly offset: number;
} {
  const { through, along } = centreLineOf(movement);
  const across = { x: along.y, y: 0 - along.x };
  return { along, across, offset: across.x * through.x + across.y * through.y };
}

/** The image of a place in the centre line. */
export function mirroredPlace(movement: Movement, at: Point | undefined): Point | undefined {
  if (!at) return undefined;
  const { across, offset } = acrossCentreLine(movement);
  const by = 2 * (offset - across.x * at.x - across.y * at.y);
  return { x: at.x + by * across.x, y: at.y + by * across.y };
}

/** How far two places are apart in a direction, mm. */
export function apartAlong(a: Point | undefined, b: Point | undefined, way: Point): number | undefined {
  return a && b && Math.abs(way.x * (a.x - b.x) + way.y * (a.y - b.y));
}

/** The line through another point along a direction, on which a point lies. */
export function lineAlong({ placeOf }: Measured, from: PointId | undefined, along: Point): StruckLocus | undefined {
  const through = from && placeOf(from);
  return from !== undefined && through ? { from, locus: { kind: 'line', through, along } } : undefined;
}
