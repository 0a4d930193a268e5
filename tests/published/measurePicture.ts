/** Lines found in rendered pictures, to a part of a pixel. */
import type { Picture } from './readPng.ts';

/** Pixels a millimetre at a resolution in dots an inch. */
export const PIXELS_A_MM_OF = (dpi: number): number => dpi / 25.4;

/**
 * Distance in pixels from a place to the middle of the first dark line met in a direction, weighted by its darkness.
 * Pixels are read where their middles lie: pixel i covers i to i + 1.
 *
 * @param skip pixels passed over before a line is looked for
 */
export function firstLine(picture: Picture, x: number, y: number, dx: number, dy: number, skip = 0): number {
  let weight = 0;
  let sum = 0;
  for (let step = skip; step < 4000; step += 0.25) {
    const px = Math.floor(x + dx * step);
    const py = Math.floor(y + dy * step);
    if (px < 0 || py < 0 || px >= picture.width || py >= picture.height) break;
    const dark = 255 - picture.grey(px, py);
    if (dark > 20) {
      weight += dark;
      sum += dark * step;
    } else if (weight > 0) break;
  }
  if (weight === 0) throw new Error('no line was met');
  return sum / weight;
}
