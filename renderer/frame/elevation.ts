/** The small true elevation of an arbor: its wheels at their levels, all rows to one scale. */

import { heightsOfArbor } from '../../solver/clearance/bodies/index.ts';
import type { Arbor, Movement, Wheel } from '../../solver/movement/schema.ts';
import type { WheelSize } from '../../solver/teeth/index.ts';

/** Size of the drawing of one row, CSS pixels. */
export const ELEVATION = { width: 84, height: 38 };

/** The scale that all rows share. */
export interface ElevationScale {
  /** Height above the marked face at the left edge, mm, and CSS pixels for a millimetre, along and across. */
  readonly from: number;
  readonly along: number;
  readonly across: number;
}

/** A wheel in the row, CSS pixels. */
export interface ElevationBox {
  readonly id: string;
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

/** Least height that a row shows, mm: a first thin wheel stands as a disc seen from its edge, not as a block. */
const LEAST_HEIGHT = 24;

/** One scale for all rows; across it is the same as along unless the wheels would not fit. */
export function elevationScale(movement: Movement, sizes: ReadonlyMap<string, WheelSize>): ElevationScale {
  let [from, to, radius] = [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY, 0];
  for (const { id, level, thickness } of movement.wheels) {
    from = Math.min(from, level);
    to = Math.max(to, level + thickness);
    radius = Math.max(radius, sizes.get(id)?.tipRadius ?? 0);
  }
  for (const arbor of movement.arbors) {
    if (!arbor.levels) continue;
    const heights = heightsOfArbor(arbor, movement);
    from = Math.min(from, heights?.from ?? from);
    to = Math.max(to, heights?.to ?? to);
  }
  if (!(from < to)) return { from: 0, along: 1, across: 1 };
  const lacks = Math.max(0, LEAST_HEIGHT - (to - from)) / 2;
  from -= lacks;
  to += lacks;
  const along = (ELEVATION.width - 12) / (to - from);
  return { from, along, across: Math.min(along, (ELEVATION.height - 2) / 2 / Math.max(radius, 1e-3)) };
}

/** Wheels of one arbor as boxes, at least a line thick, smallest last so that it is seen. */
export function elevationBoxes(
  wheels: readonly Wheel[],
  sizes: ReadonlyMap<string, WheelSize>,
  scale: ElevationScale,
): ElevationBox[] {
  return wheels
    .map((wheel) => {
      const half = Math.max(2, (sizes.get(wheel.id)?.tipRadius ?? 0) * scale.across);
      const width = Math.max(2.5, wheel.thickness * scale.along);
      const middle = 6 + (wheel.level + wheel.thickness / 2 - scale.from) * scale.along;
      return { id: wheel.id, x: middle - width / 2, y: ELEVATION.height / 2 - half, width, height: 2 * half };
    })
    .sort((a, b) => b.height - a.height);
}

/** Ends of the arbor's body, CSS pixels from the left. */
export function arborSpan(arbor: Arbor, wheels: readonly Wheel[], scale: ElevationScale): readonly [number, number] {
  const [low, high] = openSpan(arbor, wheels, scale);
  const { from, to } = arbor.levels ?? {};
  return [
    from === undefined ? low : 6 + (from - scale.from) * scale.along,
    to === undefined ? high : 6 + (to - scale.from) * scale.along,
  ];
}

/** Ends that are not stated: a pipe's stand out of its wheels, an arbor goes right across. */
function openSpan(arbor: Arbor, wheels: readonly Wheel[], scale: ElevationScale): readonly [number, number] {
  if (!arbor.ridesOn || wheels.length === 0) return [0, ELEVATION.width];
  const from = Math.min(...wheels.map(({ level }) => level));
  const to = Math.max(...wheels.map(({ level, thickness }) => level + thickness));
  return [(from - scale.from) * scale.along, 12 + (to - scale.from) * scale.along];
}
