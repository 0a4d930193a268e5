/**
 * A drawing as plain data: layers of lines, arcs, circles, closed outlines and lettering, in millimetres, x right and y up.
 * The DXF, SVG, PDF and screen writers are sinks of the same data.
 */

export type LayerName =
  | 'OUTLINE' // edges of the plate itself
  | 'HOLES' // to drill
  | 'OPENINGS' // to cut through
  | 'SCRIBE' // arcs and lines to strike
  | 'PITCH' // pitch circles
  | 'TIPS' // tip circles
  | 'TEETH' // true tooth outlines
  | 'CENTRES' // centre lines and crosses
  | 'CASE' // walls and posts
  | 'LETTERING'; // single strokes only

export type DrawnShape =
  | { readonly kind: 'line'; readonly from: readonly [number, number]; readonly to: readonly [number, number] }
  /** Counter-clockwise from `start` to `end`, radians. */
  | {
      readonly kind: 'arc';
      readonly centre: readonly [number, number];
      readonly radius: number;
      readonly start: number;
      readonly end: number;
    }
  | { readonly kind: 'circle'; readonly centre: readonly [number, number]; readonly radius: number }
  /** Vertices with bulges as in the movement's outlines; closed joins the last to the first. */
  | {
      readonly kind: 'path';
      readonly vertices: readonly { readonly x: number; readonly y: number; readonly bulge: number }[];
      readonly closed: boolean;
    }
  | {
      readonly kind: 'text';
      readonly at: readonly [number, number];
      readonly height: number;
      readonly text: string;
      readonly align: 'left' | 'middle' | 'right';
    };

export interface Layer {
  readonly name: LayerName;
  readonly shapes: readonly DrawnShape[];
}

export interface Drawing {
  readonly title: string;
  /** Which plate and which face is seen, in words: "Base plate, marked face". */
  readonly face: string;
  readonly mirrored: boolean;
  readonly layers: readonly Layer[];
  /** [minX, minY, maxX, maxY], mm. */
  readonly extents: readonly [number, number, number, number];
}

/** A hole to be made in a plate. */
export interface Hole {
  readonly id: string;
  readonly label: string;
  readonly x: number;
  readonly y: number;
  /** Finished diameter, mm. */
  readonly diameter: number;
  readonly through: boolean;
  readonly state: 'toMark' | 'marked' | 'drilled';
}

/** One marking-out step. */
export interface MarkingStep {
  readonly number: number;
  readonly point: string;
  readonly kind: 'datum' | 'arcs' | 'arcAndLine' | 'lines' | 'offset' | 'opposite' | 'same' | 'spacing' | 'derivedArcs';
  /** Divider settings or lines used, each from a point already on the metal. */
  readonly loci: readonly MarkingLocus[];
  /** Which crossing, in words: "the crossing above, nearer Post B". */
  readonly crossing?: string;
  readonly crossingAngleDeg?: number;
  readonly movedByHundredth?: number;
  readonly place: readonly [number, number];
  readonly check?: { readonly from: string; readonly distance: number };
  readonly warns?: string;
  readonly says: string;
}

export type MarkingLocus =
  | { readonly kind: 'arc'; readonly from: string; readonly radius: number; readonly rule?: string }
  | {
      readonly kind: 'line';
      readonly through: string;
      readonly to?: string;
      readonly angleDeg?: number;
      readonly rule?: string;
    };
