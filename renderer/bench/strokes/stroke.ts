/**
 * What a drawing on the bench is made of: arcs, lines and tooth profiles, as plain data.
 *
 * A figure is a list of strokes in millimetres about its owner's place, so that moving an arbor moves its strokes
 * without touching them. Ends may carry an offset in pixels, for signs that keep their size at any zoom. Widths
 * are CSS pixels.
 */

/** Pens, in the order in which the shaders know them. */
export const PENS = ['ink', 'soft', 'faint', 'chosen', 'scribe', 'sheet'] as const;
export type StrokePen = (typeof PENS)[number];

/** Line types of ISO 128-2: continuous, long-dash-dot (pitch circles by ISO 2203, centre lines), dashed, dotted. */
export const LINE_TYPES = ['continuous', 'longDashDot', 'chain', 'dashed', 'hatched'] as const;
export type LineType = (typeof LINE_TYPES)[number];

/** How a stroke is drawn, and when. */
export interface StrokeManner {
  readonly pen: StrokePen;
  /** CSS pixels. */
  readonly width: number;
  readonly type?: LineType;
  /** Shown from this setting of the numbers–context control upward (0 always, 1 only with full context). */
  readonly from?: number;
  /** For lines that give way when true teeth are drawn: the module whose size on screen decides, mm. */
  readonly untilTeeth?: number;
}

/** A circle, an arc or a band of one. */
export interface ArcStroke extends StrokeManner {
  readonly kind: 'arc';
  readonly x: number;
  readonly y: number;
  /** mm, and pixels added to it. */
  readonly radius: number;
  readonly radiusPx?: number;
  /** Radians, anticlockwise from +x; a whole circle when absent. */
  readonly start?: number;
  readonly sweep?: number;
  /** Radial width of a filled band in mm about `radius`, for hatched rings and discs. */
  readonly band?: number;
}

/** A straight stroke between two places, mm from its figure's anchor. */
export interface LineStroke extends StrokeManner {
  readonly kind: 'line';
  readonly x0: number;
  readonly y0: number;
  readonly x1: number;
  readonly y1: number;
  /** Offsets of the two ends in pixels, y up. */
  readonly px0?: readonly [number, number];
  readonly px1?: readonly [number, number];
}

export type Stroke = ArcStroke | LineStroke;
