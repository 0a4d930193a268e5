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

const plain = (value: number): string => String(Number(value.toPrecision(6)));

/** The size in the maker's own terms: "module 0.8", "16 DP (module 1.5875)", "circular pitch 2.5 mm (module 0.795775)". */
export function sizeWords(size: Wheel['size']): string {
  if ('module' in size) return `module ${plain(size.module)}`;
  if ('diametralPitch' in size) return `${plain(size.diametralPitch)} DP (module ${plain(moduleOf(size))})`;
  return `circular pitch ${plain(size.circularPitch)} mm (module ${plain(moduleOf(size))})`;
}
