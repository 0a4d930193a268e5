/** Whether the steps of marking out can be worked out between two frames of the window. */
import type { PlacedMovement } from '../../solver/planting/placed.ts';

/** Points up to which they can: 300 in a long train take 10 ms of processor time in the window, cold 30 ms. */
const MOST_POINTS = 300;
/**
 * Sum of the cubes of the points in each block that is placed together, up to which they can: how each point of a
 * block hangs on its rules is a solution of the whole block. A block of 60 points takes 15 ms, one of 80 takes 50 ms,
 * one of 300 a second.
 */
const MOST_CUBES = 63 ** 3;

/** Few points, and no large block that is placed together. */
export function hasQuickSteps({ places, order }: Pick<PlacedMovement, 'places' | 'order'>): boolean {
  if (places.size > MOST_POINTS) return false;
  return order.reduce((sum, { kind, points }) => sum + (kind === 'block' ? points.length ** 3 : 0), 0) <= MOST_CUBES;
}
