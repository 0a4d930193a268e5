/** Where the edges of plates and walls run on screen, so that no label interrupts them. */
import { piecesOf } from '../../solver/geometry/index.ts';
import type { PlacedMovement } from '../../solver/planting/placed.ts';
import { forSame } from '../state/derive/forSame.ts';
import { toScreen, type View } from '../state/view.ts';
import type { LabelBox } from './labelPlacement.ts';

/** Distance between boxes along an edge that is neither level nor upright, CSS pixels; less than a label is high. */
const STEP_PX = 12;
/** Most boxes along one piece of an edge; far closer, the rest of it is out of the window. */
const MOST = 300;

type Piece = ReturnType<typeof piecesOf>[number];

/** Boxes in CSS pixels that cover the edges of plates and walls; found once for the same edges and view. */
export const edgeBoxes: ({ movement }: PlacedMovement, view: View) => readonly LabelBox[] = forSame(
  ({ movement }, view) => [movement.plates, movement.walls, view],
  ({ movement }, view) =>
    [...movement.plates, ...movement.walls].flatMap(({ outline }) =>
      piecesOf(outline).flatMap((piece) => boxesAlong(piece, view)),
    ),
);

function boxesAlong(piece: Piece, view: View): LabelBox[] {
  if (piece.kind === 'line') {
    const a = toScreen(view, { x: piece.from.x, y: piece.from.y });
    const b = toScreen(view, { x: piece.to.x, y: piece.to.y });
    // A level or upright edge is its own box.
    if (Math.abs(a.x - b.x) < 1 || Math.abs(a.y - b.y) < 1) {
      return inWindow([Math.min(a.x, b.x), Math.min(a.y, b.y), Math.max(a.x, b.x), Math.max(a.y, b.y)], view);
    }
    const count = countOf(Math.hypot(b.x - a.x, b.y - a.y));
    return sampled(count, view, (part) => ({ x: a.x + (b.x - a.x) * part, y: a.y + (b.y - a.y) * part }));
  }
  const { centre, radius, start, sweep } = piece;
  return sampled(countOf(radius * Math.abs(sweep) * view.scale), view, (part) => {
    const angle = start + sweep * part;
    return toScreen(view, { x: centre.x + radius * Math.cos(angle), y: centre.y + radius * Math.sin(angle) });
  });
}

const countOf = (lengthPx: number): number => Math.min(MOST, Math.ceil(lengthPx / STEP_PX));

function sampled(count: number, view: View, at: (part: number) => { x: number; y: number }): LabelBox[] {
  const boxes: LabelBox[] = [];
  for (let i = 0; i <= count; i++) {
    const { x, y } = at(count === 0 ? 0 : i / count);
    boxes.push(...inWindow([x - 1, y - 1, x + 1, y + 1], view));
  }
  return boxes;
}

/** The part of a box that is in the window; none when it is outside. */
function inWindow([left, top, right, bottom]: LabelBox, { width, height }: View): LabelBox[] {
  if (right < 0 || bottom < 0 || left > width || top > height) return [];
  return [[Math.max(left, 0), Math.max(top, 0), Math.min(right, width), Math.min(bottom, height)]];
}
