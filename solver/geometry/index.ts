/**
 * Plane geometry: lines, arcs and circles, closed outlines, nearest points and crossings. Lengths in mm, angles in radians.
 *
 * Read `segments.ts` (pieces and their nearest points), then `outlines.ts` (closed outlines and filled regions).
 *
 * @example
 * const solid = { outer: { kind: 'circle', centre: [0, 0], radius: 50 }, holes: [] } as const;
 * signedDistanceToRegion(solid, [60, 0]).distance; // 10
 */
export { crossCircleLineInto, crossCirclesInto, crossLinesInto, TOUCH } from './circles.ts';
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
export {
  crossingsOf,
  endsOf,
  nearestOfSegments,
  nearestToPoint,
  pointAtAngle,
  type Segment,
  type XY,
} from './segments.ts';
