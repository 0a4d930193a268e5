/** What the pre-flight readers bring back from a drawing file, whatever its format: single pieces by layer. */

export type ReadPoint = readonly [number, number];

/** One piece that was read, lengths in mm. */
export type ReadShape =
  | { readonly kind: 'line'; readonly layer: string; readonly from: ReadPoint; readonly to: ReadPoint }
  | {
      readonly kind: 'arc';
      readonly layer: string;
      readonly from: ReadPoint;
      readonly to: ReadPoint;
      readonly centre: ReadPoint;
      readonly radius: number;
      /** Turned through from `from` to `to`, radians, positive anticlockwise in the file's own axes. */
      readonly sweep: number;
    }
  | { readonly kind: 'circle'; readonly layer: string; readonly centre: ReadPoint; readonly radius: number };

/** A drawing as it was read back. */
export interface ReadDrawing {
  readonly shapes: readonly ReadShape[];
  readonly layers: readonly string[];
  /** Size that the file itself states, mm. */
  readonly stated?: { readonly width: number; readonly height: number };
  /** Length of one unit of the file, mm; undefined where the file does not say. */
  readonly unit?: number;
  readonly problems: readonly string[];
}

/** The arc between two points with a bulge (tangent of a quarter of the turn), or a line when there is none. */
export function bulgedPiece(layer: string, from: ReadPoint, to: ReadPoint, bulge: number): ReadShape {
  if (bulge === 0) return { kind: 'line', layer, from, to };
  const sweep = 4 * Math.atan(bulge);
  const chord = Math.hypot(to[0] - from[0], to[1] - from[1]);
  const radius = chord / (2 * Math.abs(Math.sin(sweep / 2)));
  // From the middle of the chord to the centre: r·cos(half the turn) to the left for a left turn.
  const apothem = chord / 2 / Math.tan(sweep / 2);
  const ux = (to[0] - from[0]) / chord;
  const uy = (to[1] - from[1]) / chord;
  const centre: ReadPoint = [(from[0] + to[0]) / 2 - uy * apothem, (from[1] + to[1]) / 2 + ux * apothem];
  return { kind: 'arc', layer, from, to, centre, radius, sweep };
}

/** Bounds of read shapes [minX, minY, maxX, maxY]; undefined when there are none. Arcs by their own quarter points. */
export function boundsOfRead(shapes: readonly ReadShape[]): readonly [number, number, number, number] | undefined {
  const xs: number[] = [];
  const ys: number[] = [];
  for (const shape of shapes) {
    if (shape.kind === 'circle') {
      xs.push(shape.centre[0] - shape.radius, shape.centre[0] + shape.radius);
      ys.push(shape.centre[1] - shape.radius, shape.centre[1] + shape.radius);
      continue;
    }
    xs.push(shape.from[0], shape.to[0]);
    ys.push(shape.from[1], shape.to[1]);
    if (shape.kind === 'arc') {
      for (const [x, y] of quarterPoints(shape)) {
        xs.push(x);
        ys.push(y);
      }
    }
  }
  if (xs.length === 0) return undefined;
  const least = (values: readonly number[]) => values.reduce((a, b) => Math.min(a, b));
  const most = (values: readonly number[]) => values.reduce((a, b) => Math.max(a, b));
  return [least(xs), least(ys), most(xs), most(ys)];
}

function quarterPoints(arc: Extract<ReadShape, { kind: 'arc' }>): readonly ReadPoint[] {
  const start = Math.atan2(arc.from[1] - arc.centre[1], arc.from[0] - arc.centre[0]);
  const quarter = Math.PI / 2;
  const low = Math.min(start, start + arc.sweep);
  const high = Math.max(start, start + arc.sweep);
  const points: ReadPoint[] = [];
  for (let k = Math.ceil(low / quarter); k * quarter <= high; k++) {
    points.push([
      arc.centre[0] + arc.radius * Math.cos(k * quarter),
      arc.centre[1] + arc.radius * Math.sin(k * quarter),
    ]);
  }
  return points;
}
