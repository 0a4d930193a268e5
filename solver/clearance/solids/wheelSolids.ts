/** A wheel's body and its hub. */

import type { XY } from '../../geometry/index.ts';
import type { Movement, Wheel } from '../../movement/schema.ts';
import { sizeOfWheel } from '../../teeth/index.ts';
import { innerRadiusOf, type PartsIndex } from './partsIndex.ts';
import type { Draft, RingSolid } from './solid.ts';

/** Body outside the roots of an internal wheel, in modules, where the file states none: habit of the trade. */
const RING_BODY_MODULES = 2;

/** How a wheel is named in findings: its name, or "Wheel 2" for the id wheel-2, or "Wheel great" for the id great. */
export function wheelLabel(wheel: Wheel): string {
  const word = wheel.teeth <= 16 && !wheel.internal ? 'Pinion' : 'Wheel';
  const number = /^(?:wheel|pinion)(?:-(\d+))?$/.exec(wheel.id);
  return wheel.name ?? (number ? [word, number[1] ?? ''].join(' ').trim() : `${word} ${wheel.id}`);
}

/** The solids of one wheel at its arbor's place. */
export function wheelSolids(wheel: Wheel, centre: XY, parts: PartsIndex): Draft[] {
  const label = wheelLabel(wheel);
  const hole = innerRadiusOf(wheel.arbor, parts);
  const body: Omit<RingSolid, 'index'> = {
    part: wheel.id,
    label,
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
  return [body, { ...body, label: `Hub of ${label}`, role: 'hub', heights, inner: hole, outer: diameter / 2 }];
}

function radiiOf(wheel: Wheel, movement: Movement, hole: number): { inner: number; outer: number } {
  const size = sizeOfWheel(wheel, movement);
  if (!wheel.internal) return { inner: hole, outer: size.tipRadius };
  const outer = wheel.outerDiameter ?? 2 * (size.rootRadius + RING_BODY_MODULES * size.module);
  return { inner: size.tipRadius, outer: outer / 2 };
}
