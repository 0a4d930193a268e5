/** Arbors, posts and marks in plan, and the sign that tells the state of their place by its shape. */

import type { Point } from '../../../solver/geometry/index.ts';
import type { Arbor, Mark, Post } from '../../../solver/movement/schema.ts';
import type { Place } from '../../../solver/planting/placed.ts';
import type { EngravedFigure } from '../engraver.ts';
import type { ArcStroke, LineStroke, Stroke } from '../strokes/stroke.ts';
import { MIDDLE, STRONG_PX, THICK, THIN } from './lineWidths.ts';

/** Sizes of the signs, CSS pixels. */
const CROSS_ARM = 10;
const DOT = 2;
const RING = 6;
const ARROW_FROM = 9;
const ARROW_TO = 24;
const ARROW_HEAD = 6;

const circle = (radius: number, manner: Omit<ArcStroke, 'kind' | 'x' | 'y' | 'radius'>): ArcStroke => ({
  kind: 'arc',
  x: 0,
  y: 0,
  radius,
  ...manner,
});

/** A line told in pixels from the place. */
function signLine(
  from: readonly [number, number],
  to: readonly [number, number],
  pen: Stroke['pen'],
  width: number,
): LineStroke {
  return { kind: 'line', x0: 0, y0: 0, x1: 0, y1: 0, px0: from, px1: to, pen, width };
}

/** An arbor's body, its collars and the bores of its bearings. */
export function arborFigure(arbor: Arbor): EngravedFigure {
  const strokes: Stroke[] = [circle(arbor.diameter / 2, { pen: 'ink', width: MIDDLE })];
  if (arbor.pipeBore) strokes.push(circle(arbor.pipeBore / 2, { pen: 'soft', width: THIN, from: 0.4 }));
  for (const collar of arbor.collars) {
    strokes.push(circle(collar.diameter / 2, { pen: 'soft', width: THIN, from: 0.4 }));
  }
  for (const bearing of arbor.bearings) {
    strokes.push(circle(bearing.bore / 2, { pen: 'soft', width: THIN, from: 0.6 }));
    if (bearing.outer) strokes.push(circle(bearing.outer / 2, { pen: 'soft', width: THIN, from: 0.6 }));
  }
  return { owner: arbor.id, strokes };
}

/** A post is solid and cut: hatched, with its centre lines. */
export function postFigure(post: Post): EngravedFigure {
  const radius = post.diameter / 2;
  const chain = { pen: 'soft', width: THIN, type: 'chain' } as const;
  const strokes: Stroke[] = [
    circle(radius / 2, { pen: 'faint', width: 1, type: 'hatched', band: radius }),
    circle(radius, { pen: 'ink', width: THICK }),
    { kind: 'line', x0: -radius, y0: 0, x1: radius, y1: 0, px0: [-7, 0], px1: [7, 0], ...chain },
    { kind: 'line', x0: 0, y0: -radius, x1: 0, y1: radius, px0: [0, -7], px1: [0, 7], ...chain },
  ];
  if (post.hole > 0) strokes.push(circle(post.hole / 2, { pen: 'soft', width: THIN, from: 0.4 }));
  return { owner: post.id, strokes };
}

/** The hole of a mark; nothing where it has none. */
export function markFigure(mark: Mark): EngravedFigure {
  return { owner: mark.id, strokes: mark.hole > 0 ? [circle(mark.hole / 2, { pen: 'ink', width: MIDDLE })] : [] };
}

/**
 * The sign of a place: cross with dot, ring with arrows along the free directions, or broken cross.
 *
 * @param free directions for the arrows; none while something is dragged, when the pointer itself shows the way
 */
export function placeSign({ id, state }: Pick<Place, 'id' | 'state'>, free: readonly Point[]): EngravedFigure {
  if (state === 'planted') return { owner: id, strokes: plantedSign() };
  if (state === 'loose') return { owner: id, strokes: looseSign(free) };
  return { owner: id, strokes: contestedSign() };
}

function plantedSign(): Stroke[] {
  return [
    signLine([-CROSS_ARM, 0], [CROSS_ARM, 0], 'ink', 1),
    signLine([0, -CROSS_ARM], [0, CROSS_ARM], 'ink', 1),
    circle(0, { radiusPx: DOT / 2, pen: 'ink', width: DOT * 1.6 }),
  ];
}

function looseSign(free: readonly Point[]): Stroke[] {
  const strokes: Stroke[] = [circle(0, { radiusPx: RING, pen: 'ink', width: STRONG_PX })];
  for (const { x, y } of free) {
    for (const sign of [1, -1]) strokes.push(...arrow(x * sign, y * sign));
  }
  return strokes;
}

/** A small arrow in pixels along a unit vector. */
function arrow(x: number, y: number): Stroke[] {
  const tip = [x * ARROW_TO, y * ARROW_TO] as const;
  const barb = (side: number) =>
    [tip[0] - ARROW_HEAD * (x * 0.9 - side * y * 0.45), tip[1] - ARROW_HEAD * (y * 0.9 + side * x * 0.45)] as const;
  return [
    signLine([x * ARROW_FROM, y * ARROW_FROM], tip, 'ink', MIDDLE),
    signLine(tip, barb(1), 'ink', MIDDLE),
    signLine(tip, barb(-1), 'ink', MIDDLE),
  ];
}

/** A cross whose arms do not meet: its lines miss each other. The gap is dimensioned beside it. */
function contestedSign(): Stroke[] {
  const strokes: Stroke[] = [];
  for (const [x, y] of [
    [1, 0],
    [0, 1],
    [-1, 0],
    [0, -1],
  ] as const) {
    strokes.push(signLine([x * 4, y * 4], [x * 14, y * 14], 'scribe', STRONG_PX));
  }
  return strokes;
}
