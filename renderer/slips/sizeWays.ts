/** The three ways in which the size of teeth is given, and the same teeth told another way. */

import type { Wheel } from '../../solver/movement/schema.ts';
import { moduleOf } from '../../solver/teeth/index.ts';

export type WheelSizeWay = 'module' | 'diametralPitch' | 'circularPitch';

export const SIZE_WAYS: readonly { readonly value: WheelSizeWay; readonly says: string }[] = [
  { value: 'module', says: 'Module' },
  { value: 'diametralPitch', says: 'Diametral pitch' },
  { value: 'circularPitch', says: 'Circular pitch' },
];

/** Exact by definition. */
const MM_PER_INCH = 25.4;
/** Decimals kept when a size is told another way: below anything that a cutter is marked with. */
const clean = (value: number): number => Number(value.toPrecision(12));

/** The way in which a wheel's size is kept. */
export function sizeWayOf(size: Wheel['size']): WheelSizeWay {
  if ('module' in size) return 'module';
  return 'diametralPitch' in size ? 'diametralPitch' : 'circularPitch';
}

/** The number that stands in the file: mm, teeth to an inch of diameter, or mm along the pitch circle. */
export function sizeValueOf(size: Wheel['size']): number {
  if ('module' in size) return size.module;
  return 'diametralPitch' in size ? size.diametralPitch : size.circularPitch;
}

/** The same teeth, told another way. Source: definitions, m = 25.4 / DP = CP / π. */
export function sizeAs(size: Wheel['size'], way: WheelSizeWay): Wheel['size'] {
  const module = moduleOf(size);
  if (way === sizeWayOf(size)) return size;
  if (way === 'module') return { module: clean(module) };
  return way === 'diametralPitch'
    ? { diametralPitch: clean(MM_PER_INCH / module) }
    : { circularPitch: clean(Math.PI * module) };
}
