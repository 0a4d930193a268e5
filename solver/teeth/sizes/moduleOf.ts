/** Module of a tooth size, however the file states it. */
import type { Wheel } from '../../movement/schema.ts';

/** One inch, mm (exact by definition since 1959). */
export const INCH = 25.4;

/** Module in mm from a module, a diametral pitch (teeth per inch of pitch diameter) or a circular pitch in mm. */
export function moduleOf(size: Wheel['size']): number {
  if ('module' in size) return size.module;
  if ('diametralPitch' in size) return INCH / size.diametralPitch;
  return size.circularPitch / Math.PI;
}
