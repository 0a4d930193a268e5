/** A place in the plane. */

/** A place in the plane, or a direction or a step in it: mm, x right and y up; on the screen CSS pixels, y down. */
export interface Point {
  readonly x: number;
  readonly y: number;
}

/** A place as documents and drawings write it down: [x, y], mm. */
export type XY = readonly [number, number];

/** A written place as a point. */
export const asPoint = ([x, y]: XY): Point => ({ x, y });

/** A point as it is written down. */
export const xyOf = ({ x, y }: Point): XY => [x, y];

/** How far two places are apart, mm. */
export const separation = (a: Point, b: Point): number => Math.hypot(a.x - b.x, a.y - b.y);
