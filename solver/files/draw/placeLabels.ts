/**
 * Where labels stand beside their points, and lengths beside their lines: several places are tried for each, and the
 * clearest is taken. Lengths in the units of the drawing, millimetres on paper or pixels on the screen, y up.
 */
import type { Bounds } from '../../geometry/index.ts';
import type { ShapeOf } from '../drawing.ts';
import { textWidth } from './lettering.ts';

type At = readonly [number, number];

/** A label that wants a place, mm. */
export interface Labelled {
  readonly text: string;
  readonly x: number;
  readonly y: number;
  /** Radius round the point that the label keeps clear of. */
  readonly clear: number;
  /** Other end of the line from (x, y) that the label tells the length of: it then stands beside the line. */
  readonly along?: At | undefined;
  /** Height of a capital; the room's where none is given. */
  readonly height?: number | undefined;
}

/** What labels have to fit in, and keep off. */
export interface LabelRoom {
  /** Height of a capital. */
  readonly height: number;
  readonly within: Bounds;
  /** Lines that lettering should not stand on. */
  readonly lines?: readonly (readonly [At, At])[] | undefined;
  /** Distances from the point that are tried, as multiples of the nearest (default only that). */
  readonly reaches?: readonly number[] | undefined;
  /** Width of a text; that of the single strokes where none is given. */
  readonly widthOf?: ((text: string, height: number) => number) | undefined;
}

/** Where the labels went, and how well. */
export interface PlacedLabels {
  /** In the order of the labels. */
  readonly texts: readonly ShapeOf<'text'>[];
  /** Which of them keep clear of every other point, label and line. */
  readonly isClear: readonly boolean[];
  /** How many of them run into another point, or a label placed before. */
  readonly overlapping: number;
}

/** Directions tried, best first: right, left, the corners, above and below. */
const SIDES: readonly At[] = [
  [1, 0],
  [-1, 0],
  [1, 1],
  [-1, 1],
  [1, -1],
  [-1, -1],
  [0, 1],
  [0, -1],
];
/** Parts of a line that a length is tried at, best first. */
const PARTS = [0.5, 0.4, 0.6, 0.3, 0.7, 0.2, 0.8] as const;

/** Cost of leaving the bounds, in overlapped area for each unit of length: outside is better than on top of each other. */
const OUTSIDE = 4;
/** A line across lettering costs as much as a strip of this part of its height. */
const LINE_STRIP = 0.3;
/** Less overlap than this part of the square of the height is none. */
const NOTHING = 1e-6;

/** One place for a label, with the room that it takes. */
interface Candidate {
  readonly box: Bounds;
  readonly text: ShapeOf<'text'>;
}

/**
 * Labels as text shapes. Overlap with circles round the points, with lines and with labels placed before is weighed by
 * its area; the same input gives the same places.
 */
export function placeLabels(labels: readonly Labelled[], room: LabelRoom): PlacedLabels {
  const taken: Bounds[] = labels.map(({ x, y, clear }) => [x - clear, y - clear, x + clear, y + clear]);
  const placed = labels.map((label, index) => {
    const height = label.height ?? room.height;
    const own = taken[index];
    let best: { candidate: Candidate; inTheWay: number } | undefined;
    let least = Number.POSITIVE_INFINITY;
    candidatesOf(label, height, room).forEach((candidate, rank) => {
      const { box } = candidate;
      const inTheWay = overlap(box, taken) + crossed(box, room.lines ?? []) * LINE_STRIP * height;
      const cost = inTheWay + outside(box, room.within) * OUTSIDE + rank * 1e-3 * height;
      if (cost < least) {
        least = cost;
        // At a corner a label may cut into the square about its own point, though not into the circle.
        best = { candidate, inTheWay: inTheWay - (own ? overlap(box, [own]) : 0) };
      }
    });
    if (!best) throw new Error(`label "${label.text}": its place is not finite`);
    taken.push(best.candidate.box);
    return { text: best.candidate.text, isClear: best.inTheWay <= NOTHING * height * height };
  });
  return {
    texts: placed.map(({ text }) => text),
    isClear: placed.map(({ isClear }) => isClear),
    overlapping: placed.filter(({ isClear }) => !isClear).length,
  };
}

function candidatesOf(label: Labelled, height: number, room: LabelRoom): readonly Candidate[] {
  const width = (room.widthOf ?? textWidth)(label.text, height);
  if (label.along) return besideLine(label, label.along, width, height);
  return (room.reaches ?? [1]).flatMap((times) => SIDES.map((side) => besidePoint(label, side, width, height, times)));
}

/** Air round lettering, and between it and its point, in heights. */
const PAD = 0.2;
const GAP = 0.4;

function candidate(text: string, [x, y]: At, align: ShapeOf<'text'>['align'], width: number, height: number) {
  const left = align === 'left' ? x : align === 'right' ? x - width : x - width / 2;
  const pad = PAD * height;
  const box: Bounds = [left - pad, y - pad, left + width + pad, y + height + pad];
  return { box, text: { kind: 'text', at: [x, y], height, text, align } as const };
}

function besidePoint(label: Labelled, [sx, sy]: At, width: number, height: number, times: number): Candidate {
  const diagonal = sx !== 0 && sy !== 0 ? Math.SQRT1_2 : 1;
  const reach = (label.clear * diagonal + GAP * height) * times;
  const x = label.x + sx * reach;
  const middle = label.y + sy * (reach + (sx === 0 ? height / 2 : sy === 0 ? 0 : height / 4));
  const align = sx > 0 ? 'left' : sx < 0 ? 'right' : 'middle';
  return candidate(label.text, [x, middle - height / 2], align, width, height);
}

/** Level lettering on both sides of a line, just off it: farther out the more the line lies along the lettering's width. */
function besideLine(label: Labelled, [tx, ty]: At, width: number, height: number): readonly Candidate[] {
  const [dx, dy] = [tx - label.x, ty - label.y];
  const length = Math.hypot(dx, dy);
  const [nx, ny] = length === 0 ? [0, 1] : [-dy / length, dx / length];
  const off = (Math.abs(nx) * width + Math.abs(ny) * height) / 2 + GAP * height;
  // The upper side first: there a reader looks for it.
  const up = ny < 0 || (ny === 0 && nx < 0) ? -1 : 1;
  return [1, 2.2].flatMap((times) =>
    PARTS.flatMap((part) =>
      [up, -up].map((side) => {
        const x = label.x + dx * part + nx * side * off * times;
        const y = label.y + dy * part + ny * side * off * times - height / 2;
        return candidate(label.text, [x, y], 'middle', width, height);
      }),
    ),
  );
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

/** Length of the lines within a box: each cut at the box's sides in turn. */
function crossed(box: Bounds, lines: readonly (readonly [At, At])[]): number {
  return lines.reduce((sum, [a, b]) => {
    let [from, to] = [0, 1];
    for (const axis of [0, 1] as const) {
      const span = b[axis] - a[axis];
      const [low, high] = [box[axis], box[axis + 2] ?? 0];
      if (span === 0) {
        if (a[axis] < low || a[axis] > high) return sum;
        continue;
      }
      const [enter, leave] = [(low - a[axis]) / span, (high - a[axis]) / span];
      from = Math.max(from, Math.min(enter, leave));
      to = Math.min(to, Math.max(enter, leave));
    }
    return to > from ? sum + (to - from) * Math.hypot(b[0] - a[0], b[1] - a[1]) : sum;
  }, 0);
}

function outside(box: Bounds, within: Bounds): number {
  const x = Math.max(0, within[0] - box[0]) + Math.max(0, box[2] - within[2]);
  const y = Math.max(0, within[1] - box[1]) + Math.max(0, box[3] - within[3]);
  return x + y;
}
