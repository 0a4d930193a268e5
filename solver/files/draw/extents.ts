/** Bounds of drawn shapes, exact for arcs and for lettering in single strokes. */
import { type Bounds, boundsOfOutline, pieceBetween, xyOf } from '../../geometry/index.ts';
import type { Drawing, DrawnShape, Layer, ShapeOf } from '../drawing.ts';
import { strokesOfText } from './lettering.ts';

const NOTHING: Bounds = [
  Number.POSITIVE_INFINITY,
  Number.POSITIVE_INFINITY,
  Number.NEGATIVE_INFINITY,
  Number.NEGATIVE_INFINITY,
];

const union = (a: Bounds, b: Bounds): Bounds => [
  Math.min(a[0], b[0]),
  Math.min(a[1], b[1]),
  Math.max(a[2], b[2]),
  Math.max(a[3], b[3]),
];

/** Bounds of one shape, mm; text as the strokes that files hold. */
export function boundsOfShape(shape: DrawnShape): Bounds {
  switch (shape.kind) {
    case 'line':
      return boundsOfPath([vertex(shape.from), vertex(shape.to)], false);
    case 'circle':
      return boundsOfOutline({ kind: 'circle', centre: shape.centre, radius: shape.radius });
    case 'arc':
      return boundsOfArc(shape);
    case 'path':
      return boundsOfPath(shape.vertices, shape.closed);
    case 'text':
      return strokesOfText(shape).reduce((all, path) => union(all, boundsOfShape(path)), NOTHING);
  }
}

const vertex = ([x, y]: readonly [number, number]) => ({ x, y, bulge: 0 });

function boundsOfPath(vertices: ShapeOf<'path'>['vertices'], closed: boolean): Bounds {
  // An open path is bounded as a closed one whose last piece is straight: a chord adds nothing to the bounds.
  const last = vertices.at(-1);
  const path = closed || !last ? vertices : [...vertices.slice(0, -1), { ...last, bulge: 0 }];
  return path.length === 0 ? NOTHING : boundsOfOutline({ kind: 'path', vertices: path });
}

function boundsOfArc({ centre, radius, start, end }: ShapeOf<'arc'>): Bounds {
  const turn = 2 * Math.PI;
  const sweep = (((end - start) % turn) + turn) % turn || turn;
  // In halves, so that no bulge is asked for more than half a turn.
  const at = (angle: number, bulge: number) => ({
    x: centre[0] + radius * Math.cos(angle),
    y: centre[1] + radius * Math.sin(angle),
    bulge,
  });
  const bulge = Math.tan(sweep / 8);
  return boundsOfPath([at(start, bulge), at(start + sweep / 2, bulge), at(start + sweep, 0)], false);
}

/** Bounds of all layers; a point at the origin when nothing is drawn, so that no infinity reaches a file. */
export function extentsOf(layers: readonly Layer[]): Drawing['extents'] {
  let all = NOTHING;
  for (const layer of layers) for (const shape of layer.shapes) all = union(all, boundsOfShape(shape));
  return Number.isFinite(all[0]) ? all : [0, 0, 0, 0];
}

/** The pieces of a path as lines and arcs, in order of travel. */
export function piecesOfPath(path: ShapeOf<'path'>): readonly (ShapeOf<'line'> | ShapeOf<'arc'>)[] {
  const count = path.closed ? path.vertices.length : path.vertices.length - 1;
  const pieces: (ShapeOf<'line'> | ShapeOf<'arc'>)[] = [];
  for (let index = 0; index < count; index++) {
    const from = path.vertices[index];
    const to = path.vertices[(index + 1) % path.vertices.length];
    if (!from || !to) continue;
    const piece = pieceBetween(from, to);
    if (piece.kind === 'line') pieces.push({ kind: 'line', from: xyOf(piece.from), to: xyOf(piece.to) });
    else {
      const { centre, radius, start, sweep } = piece;
      pieces.push({ kind: 'arc', centre: xyOf(centre), radius, start, end: start + sweep });
    }
  }
  return pieces;
}
