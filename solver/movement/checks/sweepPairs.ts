/** Pairs of pieces whose bounds overlap, found by sweeping from left to right instead of trying every pair. */
import { endsOf, type Segment } from '../../geometry/index.ts';

/** Bounds of a piece and where it stands in the list, mm. */
type Box = {
  readonly index: number;
  readonly minX: number;
  readonly maxX: number;
  readonly minY: number;
  readonly maxY: number;
};

/** Calls `visit` with each pair of indices whose bounds touch; stops at the first for which it answers true. */
export function sweepPairs(pieces: readonly Segment[], visit: (a: number, b: number) => boolean): void {
  const boxes = pieces.map(boxOf).sort((p, q) => p.minX - q.minX || p.index - q.index);
  let active: Box[] = [];
  for (const box of boxes) {
    active = active.filter((other) => other.maxX >= box.minX);
    for (const other of active) {
      if (other.minY > box.maxY || other.maxY < box.minY) continue;
      if (visit(Math.min(other.index, box.index), Math.max(other.index, box.index))) return;
    }
    active.push(box);
  }
}

/** Bounds of a piece; for an arc those of its whole circle, which are enough here. */
function boxOf(piece: Segment, index: number): Box {
  if (piece.kind === 'arc') {
    const { x, y } = piece.centre;
    const r = piece.radius;
    return { index, minX: x - r, maxX: x + r, minY: y - r, maxY: y + r };
  }
  const [{ x: ax, y: ay }, { x: bx, y: by }] = endsOf(piece);
  return { index, minX: Math.min(ax, bx), maxX: Math.max(ax, bx), minY: Math.min(ay, by), maxY: Math.max(ay, by) };
}
