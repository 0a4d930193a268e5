/** Outlines of lines and arcs as strokes, and as rings of points for hatching. */

import type { Point } from '../../../solver/geometry/index.ts';
import { asPoint, type OutlineShape, piecesOf } from '../../../solver/geometry/index.ts';
import type { Stroke, StrokeManner } from '../strokes/stroke.ts';

/** Strokes of a closed outline, told from `anchor`. */
export function strokesOfOutline(outline: OutlineShape, anchor: Point, manner: StrokeManner): Stroke[] {
  return piecesOf(outline).map((piece): Stroke => {
    if (piece.kind === 'line') {
      return {
        kind: 'line',
        x0: piece.from.x - anchor.x,
        y0: piece.from.y - anchor.y,
        x1: piece.to.x - anchor.x,
        y1: piece.to.y - anchor.y,
        ...manner,
      };
    }
    return {
      kind: 'arc',
      x: piece.centre.x - anchor.x,
      y: piece.centre.y - anchor.y,
      radius: piece.radius,
      start: piece.start,
      sweep: piece.sweep,
      ...manner,
    };
  });
}

/** Largest distance between an arc and the chords that stand for it in hatching, as a part of its radius; hidden under the outline's own line. */
const SAGITTA = 2e-5;

/** Points round an outline, told from `anchor`, close enough together to hide the chords under the outline's line. */
export function ringOfOutline(outline: OutlineShape, anchor: Point): (readonly [number, number])[] {
  const step = 2 * Math.acos(1 - SAGITTA);
  const ring: (readonly [number, number])[] = [];
  if (outline.kind === 'circle') {
    const n = Math.ceil((2 * Math.PI) / step);
    for (let i = 0; i < n; i++) {
      ring.push(onCircle(asPoint(outline.centre), outline.radius, (2 * Math.PI * i) / n, anchor));
    }
    return ring;
  }
  const pieces = piecesOf(outline);
  pieces.forEach((piece, index) => {
    const vertex = outline.vertices[index];
    if (!vertex) return;
    ring.push([vertex.x - anchor.x, vertex.y - anchor.y]);
    if (piece.kind === 'line') return;
    const n = Math.max(1, Math.ceil(piece.sweep / step));
    for (let i = 1; i < n; i++) {
      const part = vertex.bulge > 0 ? i / n : 1 - i / n;
      ring.push(onCircle(piece.centre, piece.radius, piece.start + piece.sweep * part, anchor));
    }
  });
  return ring;
}

function onCircle(centre: Point, radius: number, angle: number, anchor: Point): readonly [number, number] {
  return [centre.x + radius * Math.cos(angle) - anchor.x, centre.y + radius * Math.sin(angle) - anchor.y];
}
