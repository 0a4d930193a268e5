/** Sizes of teeth as a maker states them. */
import type { Wheel } from '../../movement/schema.ts';
import { moduleOf } from '../../teeth/index.ts';
import type { Speaker } from '../speaker.ts';

/** "module 0.8", "16 DP (module 1.5875)", "circular pitch 2.500 mm (module 0.795775)": a module is always in mm. */
export function sizeSays(size: Wheel['size'], speaker: Speaker): string {
  const module = `module ${speaker.plain(moduleOf(size))}`;
  if ('module' in size) return module;
  if ('diametralPitch' in size) return `${speaker.plain(size.diametralPitch)} DP (${module})`;
  return `circular pitch ${speaker.length(size.circularPitch)} (${module})`;
}

/** "Ø 12.300 mm" */
export function diameterSays(diameter: number, speaker: Speaker): string {
  return `Ø ${speaker.length(diameter)}`;
}

/** A share of one as per cent: "34 %". */
export function percentSays(share: number, { number }: Speaker): string {
  return `${number(100 * share, 0)} %`;
}
