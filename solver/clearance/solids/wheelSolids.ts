/** A wheel's body and its hub. */

import type { Point } from '../../geometry/index.ts';
import type { Movement, Wheel } from '../../movement/schema.ts';
import { sizeOfWheel } from '../../teeth/index.ts';
import { innerRadiusOf, type PartsIndex } from './partsIndex.ts';
import type { Draft, RingSolid } from './solid.ts';

/** Body outside the roots of an internal wheel, in modules, where the file states none: habit of the trade. */
const RING_BODY_MODULES = 2;

/** The solids of one wheel at its arbor's place. */
export function wheelSolids(wheel: Wheel, centre: Point, parts: PartsIndex): Draft[] {
  const hole = innerRadiusOf(wheel.arbor, parts);
  const body: Omit<RingSolid, 'index'> = {
    part: wheel.id,
    piece: 'whole',
    role: 'wheel',
    heights: { from: wheel.level, to: wheel.level + wheel.thickness },
    arbor: wheel.arbor,
    shape: 'ring',
    centre,
    ...radiiOf(wheel, parts.movement, hole),
  };
  if (!wheel.hub) return [body];
  const { from, to, diameter } = wheel.hub;
  const heights = { from, to };
  return [body, { ...body, piece: 'hub', role: 'hub', heights, inner: hole, outer: diameter / 2 }];
}

function radiiOf(wheel: Wheel, movement: Movement, hole: number): { inner: number; outer: number } {
  const size = sizeOfWheel(wheel, movement);
  if (!wheel.internal) return { inner: hole, outer: size.tipRadius };
  const outer = wheel.outerDiameter ?? 2 * (size.rootRadius + RING_BODY_MODULES * size.module);
  return { inner: size.tipRadius, outer: outer / 2 };
}
