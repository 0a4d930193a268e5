/**
 * Strokes packed into flat arrays for the graphics card, one record each; figures are packed once and copied.
 */
import { type ArcStroke, LINE_TYPES, type LineStroke, PENS, type Stroke, type StrokeManner } from './stroke.ts';

/** Floats in one record, both kinds: 4 + 4 + 4 + 4. */
export const RECORD = 16;
const TURN = 2 * Math.PI;

/** Strokes as records for the card. */
export interface Packed {
  readonly arcs: Float32Array;
  readonly lines: Float32Array;
}

/** A pen and a line type in one number: pen + 16 × type. */
function penAndType(manner: StrokeManner): number {
  return PENS.indexOf(manner.pen) + 16 * LINE_TYPES.indexOf(manner.type ?? 'continuous');
}

function packManner(out: Float32Array, at: number, manner: StrokeManner, owner: number): void {
  out[at] = owner;
  out[at + 1] = penAndType(manner);
  out[at + 2] = manner.from ?? 0;
  out[at + 3] = manner.untilTeeth ?? 0;
}

function packArc(out: Float32Array, at: number, arc: ArcStroke, owner: number): void {
  out[at] = arc.x;
  out[at + 1] = arc.y;
  out[at + 2] = arc.radius;
  out[at + 3] = arc.radiusPx ?? 0;
  out[at + 4] = arc.start ?? 0;
  out[at + 5] = arc.sweep ?? TURN;
  out[at + 6] = arc.width;
  out[at + 7] = arc.band ?? 0;
  packManner(out, at + 8, arc, owner);
}

function packLine(out: Float32Array, at: number, line: LineStroke, owner: number): void {
  out[at] = line.x0;
  out[at + 1] = line.y0;
  out[at + 2] = line.x1;
  out[at + 3] = line.y1;
  out[at + 4] = line.px0?.[0] ?? 0;
  out[at + 5] = line.px0?.[1] ?? 0;
  out[at + 6] = line.px1?.[0] ?? 0;
  out[at + 7] = line.px1?.[1] ?? 0;
  packManner(out, at + 8, line, owner);
  out[at + 12] = line.width;
}

/** The records of a figure; `owner` is the row of the place table that moves it. */
export function packStrokes(strokes: readonly Stroke[], owner: number): Packed {
  const arcCount = strokes.reduce((n, stroke) => n + (stroke.kind === 'arc' ? 1 : 0), 0);
  const arcs = new Float32Array(arcCount * RECORD);
  const lines = new Float32Array((strokes.length - arcCount) * RECORD);
  let arcAt = 0;
  let lineAt = 0;
  for (const stroke of strokes) {
    if (stroke.kind === 'arc') {
      packArc(arcs, arcAt, stroke, owner);
      arcAt += RECORD;
    } else {
      packLine(lines, lineAt, stroke, owner);
      lineAt += RECORD;
    }
  }
  return { arcs, lines };
}

/** Copies records one after the other into `into`, growing it by doubling when it is too small. */
export function joinRecords(parts: readonly Float32Array[], into: Float32Array): { data: Float32Array; used: number } {
  const used = parts.reduce((n, part) => n + part.length, 0);
  const data = used <= into.length ? into : new Float32Array(Math.max(used, into.length * 2, RECORD * 64));
  let at = 0;
  for (const part of parts) {
    data.set(part, at);
    at += part.length;
  }
  return { data, used };
}
