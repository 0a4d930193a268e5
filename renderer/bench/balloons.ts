/** Where the numbered balloons of findings stand: near their place, outward, clear of each other. Pixels only. */
import type { Box } from './labelPlacement.ts';
import type { Point } from './view.ts';

export interface Balloon {
  readonly key: string;
  readonly number: number;
  readonly at: Point;
  readonly to: Point;
}

/** Radius of a balloon, and the distances tried from its place, CSS pixels. */
export const BALLOON_RADIUS = 11;
const REACHES = [44, 64, 92, 128];
const TURNS = [0, 0.4, -0.4, 0.8, -0.8, 1.3, -1.3, 1.9, -1.9, 2.6, -2.6, Math.PI];

/**
 * Places balloons in order: the first finding chooses first.
 *
 * @param places  key, number and the pixel that each points at; those outside the window are led from its edge
 * @param middle  the middle of the work on screen: balloons stand on the far side from it
 */
export function placeBalloons(
  places: readonly { readonly key: string; readonly number: number; readonly to: Point }[],
  middle: Point,
  window: Box,
): Balloon[] {
  const placed: Balloon[] = [];
  const isFree = (at: Point): boolean =>
    at.x > window[0] + BALLOON_RADIUS + 4 &&
    at.y > window[1] + BALLOON_RADIUS + 4 &&
    at.x < window[2] - BALLOON_RADIUS - 4 &&
    at.y < window[3] - BALLOON_RADIUS - 4 &&
    placed.every((other) => Math.hypot(other.at.x - at.x, other.at.y - at.y) > 2.4 * BALLOON_RADIUS);
  for (const { key, number, to } of places) {
    if (to.x < window[0] || to.y < window[1] || to.x > window[2] || to.y > window[3]) continue;
    const outward = Math.atan2(to.y - middle.y, to.x - middle.x);
    const at = firstFree(to, outward, isFree);
    if (at) placed.push({ key, number, at, to });
  }
  return placed;
}

function firstFree(to: Point, outward: number, isFree: (at: Point) => boolean): Point | undefined {
  for (const reach of REACHES) {
    for (const turn of TURNS) {
      const at = { x: to.x + reach * Math.cos(outward + turn), y: to.y + reach * Math.sin(outward + turn) };
      if (isFree(at)) return at;
    }
  }
  return undefined;
}
