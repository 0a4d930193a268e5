/**
 * A drawing as plain data: layers of lines, arcs, circles, closed outlines and lettering, in millimetres, x right and y up.
 * The DXF, SVG, PDF and screen writers are sinks of the same data.
 */
import type { DrawnVertex } from '../marking/index.ts';

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

/** Every layer, in the order in which drawings and files list them. */
export const LAYER_NAMES: readonly LayerName[] = [
  'OUTLINE',
  'HOLES',
  'OPENINGS',
  'SCRIBE',
  'PITCH',
  'TIPS',
  'TEETH',
  'CENTRES',
  'CASE',
  'LETTERING',
];

/** One thing that is drawn, lengths in mm, angles in radians anticlockwise from +x. */
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
  | { readonly kind: 'path'; readonly vertices: readonly DrawnVertex[]; readonly closed: boolean }
  | {
      readonly kind: 'text';
      readonly at: readonly [number, number];
      readonly height: number;
      readonly text: string;
      readonly align: 'left' | 'middle' | 'right';
    };

/** The shapes of one kind. */
export type ShapeOf<Kind extends DrawnShape['kind']> = Extract<DrawnShape, { readonly kind: Kind }>;

/** Shapes that belong together for a machine or an eye. */
export interface Layer {
  readonly name: LayerName;
  readonly shapes: readonly DrawnShape[];
}

/** One face of a plate or one part, as every writer takes it. */
export interface Drawing {
  readonly title: string;
  /** Which plate and which face is seen, in words: "Base plate, marked face". */
  readonly face: string;
  readonly mirrored: boolean;
  readonly layers: readonly Layer[];
  /** [minX, minY, maxX, maxY], mm. */
  readonly extents: readonly [number, number, number, number];
}

/** How much a drawing shows: only what is cut, only what is needed to strike the points, or everything. */
export type Density = 'cut' | 'numbers' | 'context';
