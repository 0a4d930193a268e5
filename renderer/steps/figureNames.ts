/** Names and lengths on the picture of a step, in pixels, placed so that they keep clear of each other and of what is struck. */

import { type Labelled, type LabelRoom, placeLabels } from '../../solver/files/index.ts';
import type { Point } from '../../solver/geometry/index.ts';
import { ONE_PLACE } from '../../solver/tolerances.ts';
import type { StepFigure, StepMark } from './stepFigure.ts';

/** A word on the picture. */
export interface FigureText {
  readonly kind: 'target' | 'length' | 'source' | 'there';
  readonly text: string;
  /** Start, middle or end of the baseline, pixels, y down. */
  readonly x: number;
  readonly y: number;
  readonly anchor: 'start' | 'middle' | 'end';
}

/** How places of the plate come to the picture, pixels. */
export interface Projection {
  readonly px: (x: number) => number;
  readonly py: (y: number) => number;
  readonly width: number;
  readonly height: number;
}

/** Sizes of type, pixels, as the picture's styles have them. */
export const SIZES = { target: 18, length: 18, source: 15, there: 13 } as const;
/** Height of a capital as part of the type's size: that of the window's typeface, nearly. */
const CAPITAL = 0.72;
/** Radii of the marks that names keep off, pixels. */
const CLEAR = { target: 13, source: 11, there: 9 } as const;
/** How far a label may stand from the edge of the picture, pixels. */
const EDGE = 4;

/** A word that looks for its place. */
interface Wanted extends Labelled {
  readonly kind: FigureText['kind'];
}

/**
 * The texts of a figure. The point that is struck, its lengths and the points that it is struck from are always named;
 * a point that only stands there is named where there is room.
 *
 * @param lengthSays a length in the maker's unit
 * @param widthOf    width of a text set at a size, pixels
 */
export function figureNames(
  figure: StepFigure,
  projection: Projection,
  lengthSays: (mm: number) => string,
  widthOf: (text: string, size: number, kind: FigureText['kind']) => number,
): readonly FigureText[] {
  const { px, py, width, height } = projection;
  const at = ({ x, y }: Point): readonly [number, number] => [px(x), -py(y)];
  const named = (mark: StepMark, kind: 'target' | 'source' | 'there'): Wanted => {
    const [x, y] = at(mark);
    return { kind, text: mark.label, x, y, clear: CLEAR[kind], height: SIZES[kind] * CAPITAL };
  };
  const lengths = figure.legs.map(({ from, length }): Wanted => {
    const [x, y] = at(from);
    return {
      kind: 'length',
      text: lengthSays(length),
      x,
      y,
      clear: 0,
      along: at(figure.target),
      height: SIZES.length * CAPITAL,
    };
  });
  const { sources, others } = sharedNames(figure);
  const labels = [
    named(figure.target, 'target'),
    ...lengths,
    ...sources.map((mark) => named(mark, 'source')),
    ...others.map((mark) => named(mark, 'there')),
  ];
  const room: LabelRoom = {
    height: SIZES.there * CAPITAL,
    within: [EDGE, EDGE - height, width - EDGE, -EDGE],
    lines: linesOf(figure, at),
    reaches: [1, 1.7, 2.6],
    widthOf: (text, capital) => {
      const size = capital / CAPITAL;
      return widthOf(text, size, labels.find((label) => label.text === text)?.kind ?? 'there');
    },
  };
  const { texts, isClear } = placeLabels(labels, room);
  return labels.flatMap(({ kind, text }, index): FigureText[] => {
    const placed = texts[index];
    if (!placed || (kind === 'there' && !isClear[index])) return [];
    const anchor = placed.align === 'left' ? 'start' : placed.align === 'right' ? 'end' : 'middle';
    return [{ kind, text, x: placed.at[0], y: -placed.at[1], anchor }];
  });
}

/** Points at one place under one name; a place that the step uses is named by what it is used as, first. */
function sharedNames({ there, sources }: StepFigure): { sources: readonly StepMark[]; others: readonly StepMark[] } {
  const places: { used: boolean; marks: StepMark[] }[] = [];
  for (const mark of there) {
    const used = sources.has(mark.id);
    const place = places.find(
      ({ marks: [first] }) => first && Math.hypot(first.x - mark.x, first.y - mark.y) < ONE_PLACE,
    );
    if (!place) places.push({ used, marks: [mark] });
    else {
      place.used ||= used;
      if (used) place.marks.unshift(mark);
      else place.marks.push(mark);
    }
  }
  const joined = places.flatMap(({ used, marks }) => {
    const [first] = marks;
    return first ? [{ used, mark: { ...first, label: marks.map(({ label }) => label).join(' / ') } }] : [];
  });
  return {
    sources: joined.filter(({ used }) => used).map(({ mark }) => mark),
    others: joined.filter(({ used }) => !used).map(({ mark }) => mark),
  };
}

/** Pieces into which an arc is cut for keeping off it. */
const CHORDS = 8;

function linesOf(figure: StepFigure, at: (point: Point) => readonly [number, number]) {
  const lines = figure.legs.map(({ from }) => [at(from), at(figure.target)] as const);
  for (const line of figure.struck) {
    if (line.kind === 'line') {
      lines.push([at(line.from), at(line.to)]);
      continue;
    }
    const { centre, radius } = line;
    const start = Math.atan2(line.start.y - centre.y, line.start.x - centre.x);
    const end = Math.atan2(line.end.y - centre.y, line.end.x - centre.x);
    const sweep = (((end - start) % (2 * Math.PI)) + 2 * Math.PI) % (2 * Math.PI);
    const on = (part: number) => {
      const angle = start + sweep * part;
      return at({ x: centre.x + radius * Math.cos(angle), y: centre.y + radius * Math.sin(angle) });
    };
    for (let piece = 0; piece < CHORDS; piece++) lines.push([on(piece / CHORDS), on((piece + 1) / CHORDS)]);
  }
  return lines;
}
