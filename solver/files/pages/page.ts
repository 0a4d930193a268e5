/**
 * A printed page as plain data: marks in millimetres from the lower left corner, y up. The PDF writer, the SVG preview
 * and the screen are sinks of the same marks, so the preview is the file.
 */
import type { DrawnVertex } from '../../marking/index.ts';

/** How a line is drawn. */
export interface Ink {
  /** Line width, mm. */
  readonly width: number;
  /** sRGB, 0..1 each. */
  readonly colour: readonly [number, number, number];
  /** Lengths of dashes and gaps, mm. */
  readonly dash?: readonly number[] | undefined;
}

export type Colour = Ink['colour'];

/** One mark on a page: a line, an outline, a filled area, or text. */
export type PageMark =
  | {
      readonly kind: 'line';
      readonly from: readonly [number, number];
      readonly to: readonly [number, number];
      readonly ink: Ink;
    }
  | { readonly kind: 'circle'; readonly centre: readonly [number, number]; readonly radius: number; readonly ink: Ink }
  /** Anticlockwise from `start` to `end`, radians. */
  | {
      readonly kind: 'arc';
      readonly centre: readonly [number, number];
      readonly radius: number;
      readonly start: number;
      readonly end: number;
      readonly ink: Ink;
    }
  | { readonly kind: 'path'; readonly vertices: readonly DrawnVertex[]; readonly closed: boolean; readonly ink: Ink }
  | { readonly kind: 'fill'; readonly box: Box; readonly colour: Colour }
  | {
      readonly kind: 'text';
      /** Left end of the baseline, mm; alignment is settled when the mark is made. */
      readonly at: readonly [number, number];
      /** Type size (em), mm. */
      readonly size: number;
      readonly text: string;
      readonly weight: Weight;
      readonly colour: Colour;
      /** Turned anticlockwise about `at`, radians. */
      readonly turned?: number | undefined;
    }
  | { readonly kind: 'clip'; readonly box: Box; readonly marks: readonly PageMark[] };

export type Weight = 'regular' | 'bold';

/** [minX, minY, maxX, maxY], mm. */
export type Box = readonly [number, number, number, number];

/** A printed page with its size, mm. */
export interface Page {
  readonly width: number;
  readonly height: number;
  readonly marks: readonly PageMark[];
}

/** Widths of text in the faces that the pages are set in, mm. */
export interface TypeMeasure {
  width(text: string, size: number, weight: Weight): number;
}

export const PAPER: Colour = [1, 1, 1];
export const INK: Colour = [0.133, 0.137, 0.122];
export const SOFT: Colour = [0.42, 0.404, 0.361];
export const FAINT: Colour = [0.725, 0.702, 0.639];
export const STRONG: Colour = [0.835, 0.369, 0];

/** The ink of a line of so many mm. */
export const line = (width: number, colour: Colour = INK, dash?: readonly number[]): Ink => ({ width, colour, dash });
