/** Where labels stand beside their points: eight places are tried round each, and the clearest is taken. */
import type { Bounds } from '../../geometry/outlines.ts';
import type { ShapeOf } from '../drawing.ts';
import { textWidth } from './lettering.ts';

export interface Labelled {
  readonly text: string;
  readonly x: number;
  readonly y: number;
  /** Radius round the point that the label keeps clear of, mm. */
  readonly clear: number;
}

/** Directions tried, best first: right, left, the corners, above and below. */
const SIDES: readonly (readonly [number, number])[] = [
  [1, 0],
  [-1, 0],
  [1, 1],
  [-1, 1],
  [1, -1],
  [-1, -1],
  [0, 1],
  [0, -1],
];

/** Cost of leaving the plate's bounds, in overlapped square millimetres: a label outside is better than two on top of each other. */
const OUTSIDE = 4;

export interface PlacedLabels {
  readonly texts: readonly ShapeOf<'text'>[];
  /** How many of them run into another point, or a label placed before. */
  readonly overlapping: number;
}

/**
 * Labels as text shapes, in the order given. Overlap with circles round the points and with labels placed before is
 * weighed by its area; the same input gives the same places.
 */
export function placeLabels(labels: readonly Labelled[], height: number, within: Bounds): PlacedLabels {
  const taken: Bounds[] = labels.map(({ x, y, clear }) => [x - clear, y - clear, x + clear, y + clear]);
  const texts: ShapeOf<'text'>[] = [];
  let overlapping = 0;
  for (const [index, label] of labels.entries()) {
    let best: { box: Bounds; text: ShapeOf<'text'> } | undefined;
    let least = Number.POSITIVE_INFINITY;
    SIDES.forEach((side, rank) => {
      const candidate = candidateAt(label, side, height);
      const cost = overlap(candidate.box, taken) + outside(candidate.box, within) * OUTSIDE + rank * 1e-3;
      if (cost < least) {
        least = cost;
        best = candidate;
      }
    });
    if (!best) continue;
    if (overlap(best.box, taken.toSpliced(index, 1)) > 0) overlapping++;
    taken.push(best.box);
    texts.push(best.text);
  }
  return { texts, overlapping };
}

function candidateAt(label: Labelled, [sx, sy]: readonly [number, number], height: number) {
  const width = textWidth(label.text, height);
  const gap = 0.4 * height;
  const diagonal = sx !== 0 && sy !== 0 ? Math.SQRT1_2 : 1;
  const reach = label.clear * diagonal + gap;
  const x = label.x + sx * reach;
  const middle = label.y + sy * (reach + (sx === 0 ? height / 2 : sy === 0 ? 0 : height / 4));
  const left = sx > 0 ? x : sx < 0 ? x - width : x - width / 2;
  const y = middle - height / 2;
  const align = sx > 0 ? 'left' : sx < 0 ? 'right' : 'middle';
  const pad = 0.2 * height;
  const box: Bounds = [left - pad, y - pad, left + width + pad, y + height + pad];
  return { box, text: { kind: 'text', at: [x, y], height, text: label.text, align } as const };
}

function overlap(box: Bounds, others: readonly Bounds[]): number {
  let area = 0;
  for (const other of others) {
    const width = Math.min(box[2], other[2]) - Math.max(box[0], other[0]);
    const height = Math.min(box[3], other[3]) - Math.max(box[1], other[1]);
    if (width > 0 && height > 0) area += width * height;
  }
  return area;
}

function outside(box: Bounds, within: Bounds): number {
  const x = Math.max(0, within[0] - box[0]) + Math.max(0, box[2] - within[2]);
  const y = Math.max(0, within[1] - box[1]) + Math.max(0, box[3] - within[3]);
  return x + y;
}
