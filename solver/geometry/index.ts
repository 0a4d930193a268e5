/**
 * Plane geometry: lines, arcs and circles, closed outlines, nearest points and crossings. Lengths in mm, angles in radians.
 *
 * Read `point.ts` and `locus.ts` (where a point may lie), `segments.ts` (pieces and their nearest points), then `outlines.ts` (closed outlines and filled regions).
 *
 * @example
 * const solid = { outer: { kind: 'circle', centre: [0, 0], radius: 50 }, holes: [] } as const;
 * signedDistanceToRegion(solid, [60, 0]).distance; // 10
 */
export { crossCircleLineInto, crossCirclesInto, crossLinesInto } from './circles.ts';
export {
  type Curve,
  crossingAngle,
  crossingsOfLoci,
  distanceToLocus,
  type Locus,
  nearestOnLocus,
  normalOfLocus,
  offLocus,
  otherCrossingOfLoci,
} from './locus.ts';
export { Meet, meetLoci, Shape } from './meetLoci.ts';
export {
  areaOfOutline,
  type Bounds,
  boundsOfOutline,
  containsPoint,
  farthestOnOutline,
  nearestOnOutline,
  type OutlineShape,
  type OutlineVertex,
  pieceBetween,
  piecesOf,
  type Region,
  signedDistanceToRegion,
} from './outlines.ts';
export { asPoint, type Point, separation, type XY, xyOf } from './point.ts';
export {
  crossingsOf,
  endsOf,
  nearestOfSegments,
  nearestToPoint,
  pointAtAngle,
  type Segment,
} from './segments.ts';
