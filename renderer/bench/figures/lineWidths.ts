/**
 * Widths of lines on the bench, CSS pixels. ISO 128-2 asks for two widths in the ratio 2:1; the thick one is for
 * visible outlines, the thin one for centre lines, pitch circles, dimensions and hatching.
 */
export const THICK = 1.5;
export const THIN = 0.8;
/** Between the two: the tips of wheels, of which there are many. */
export const MIDDLE = 1.15;
/** Scribed arcs and what is chosen. */
export const STRONG_PX = 2;
