/** A drawing as marks on a page: shifted, scaled, each layer with its own ink, lettering in the page's type. */
import { piecesOfPath } from '../draw/extents.ts';
import type { Drawing, LayerName, ShapeOf } from '../drawing.ts';
import { walkDrawing } from '../write/walk.ts';
import { INK, type Ink, line, PAPER, type PageMark, SOFT, STRONG, type TypeMeasure } from './page.ts';

/** From drawing to page: x_page = scale.x · x + shift.x. */
export interface MarkPlacing {
  readonly scale: { readonly x: number; readonly y: number };
  readonly shift: readonly [number, number];
}

/** Lines after ISO 128 drafting practice: outlines wide, circles of pitch long-dashed with dots, the rest narrow. */
const INKS: Readonly<Record<LayerName, Ink>> = {
  OUTLINE: line(0.35),
  HOLES: line(0.25),
  OPENINGS: line(0.25),
  SCRIBE: line(0.13, STRONG),
  PITCH: line(0.13, SOFT, [6, 1, 0.3, 1]),
  TIPS: line(0.13, SOFT),
  TEETH: line(0.1, SOFT),
  CENTRES: line(0.13),
  CASE: line(0.18, SOFT),
  LETTERING: line(0.18),
};

/** Height of a capital as part of the type size, for DejaVu Sans (its own capital height: 1493 of 2048 units). */
export const CAPITAL = 0.729;

/** A hair of unequal scales, from a printer's calibration: circles are then drawn as ellipses by short arcs of their path. */
const EQUAL = 1e-12;

/** What is cut or struck is never interrupted by lettering; everything else is. */
const WHOLE: ReadonlySet<LayerName> = new Set(['OUTLINE', 'HOLES', 'OPENINGS', 'CENTRES']);

/** The marks of a drawing on the page: what lettering may cover first, then paper under the lettering, then the rest. */
export function marksOfDrawing(drawing: Drawing, placing: MarkPlacing, measure: TypeMeasure): readonly PageMark[] {
  const whole: PageMark[] = [];
  const covered: PageMark[] = [];
  const paper: PageMark[] = [];
  const lettering: PageMark[] = [];
  let marks = whole;
  let ink: Ink = INKS.OUTLINE;
  const at = ([x, y]: readonly [number, number]) => pointOn(placing, x, y);
  const { x: sx, y: sy } = placing.scale;
  const isEven = Math.abs(sx - sy) < EQUAL;
  const polygon = (points: readonly (readonly [number, number])[], closed: boolean): void => {
    const vertices = points.map((point) => ({ x: at(point)[0], y: at(point)[1], bulge: 0 }));
    marks.push({ kind: 'path', vertices, closed, ink });
  };
  walkDrawing(drawing, {
    layer: (name) => {
      ink = INKS[name];
      marks = WHOLE.has(name) ? whole : covered;
    },
    line: ({ from, to }) => marks.push({ kind: 'line', from: at(from), to: at(to), ink }),
    circle: (circle) => {
      if (isEven) marks.push({ kind: 'circle', centre: at(circle.centre), radius: circle.radius * sx, ink });
      else polygon(roundPoints(circle.centre, circle.radius, 0, 2 * Math.PI), true);
    },
    arc: (arc) => {
      if (isEven) {
        marks.push({
          kind: 'arc',
          centre: at(arc.centre),
          radius: arc.radius * sx,
          start: arc.start,
          end: arc.end,
          ink,
        });
      } else polygon(roundPoints(arc.centre, arc.radius, arc.start, arc.end), false);
    },
    path: (path) => {
      if (isEven) marks.push({ kind: 'path', vertices: placedVertices(path, placing), closed: path.closed, ink });
      else polygon(pathPoints(path), path.closed);
    },
    text: (text) => {
      const { under, words } = textMarks(text, placing, measure);
      paper.push(under);
      lettering.push(words);
    },
  });
  return [...covered, ...paper, ...whole, ...lettering];
}

const pointOn = ({ scale, shift }: MarkPlacing, x: number, y: number): readonly [number, number] => [
  x * scale.x + shift[0],
  y * scale.y + shift[1],
];

/** Under equal scales a bulge is the same bulge. */
function placedVertices(path: ShapeOf<'path'>, placing: MarkPlacing) {
  return path.vertices.map(({ x, y, bulge }) => {
    const [px, py] = pointOn(placing, x, y);
    return { x: px, y: py, bulge };
  });
}

/** A path with its arcs in short chords, in the drawing's own coordinates. */
function pathPoints(path: ShapeOf<'path'>): readonly (readonly [number, number])[] {
  const points: (readonly [number, number])[] = path.vertices[0] ? [[path.vertices[0].x, path.vertices[0].y]] : [];
  piecesOfPath(path).forEach((piece, index) => {
    if (piece.kind === 'line') points.push(piece.to);
    else {
      const round = roundPoints(piece.centre, piece.radius, piece.start, piece.end);
      // Pieces are told anticlockwise; the path may run the other way.
      const forward = (path.vertices[index]?.bulge ?? 0) > 0;
      points.push(...(forward ? round : [...round].reverse()).slice(1));
    }
  });
  return points;
}

/** Sagitta of the chords that stand for an arc under unequal scales, mm: a tenth of the 0.01 that sheets must keep. */
const SAGITTA = 0.001;

function roundPoints([cx, cy]: readonly [number, number], radius: number, start: number, end: number) {
  const turn = 2 * Math.PI;
  const sweep = end - start >= turn ? turn : (((end - start) % turn) + turn) % turn || turn;
  const step = 2 * Math.acos(Math.max(0, 1 - SAGITTA / radius));
  const count = Math.max(8, Math.ceil(sweep / step));
  return Array.from({ length: count + 1 }, (_, index): readonly [number, number] => {
    const angle = start + (sweep * index) / count;
    return [cx + radius * Math.cos(angle), cy + radius * Math.sin(angle)];
  });
}

/** Paper left clear round lettering, as part of a capital's height, so that lines under it do not disturb the reading. */
const AIR = 0.18;

function textMarks(
  text: ShapeOf<'text'>,
  placing: MarkPlacing,
  measure: TypeMeasure,
): { readonly under: PageMark; readonly words: PageMark } {
  const [x, y] = pointOn(placing, text.at[0], text.at[1]);
  const size = (text.height * placing.scale.x) / CAPITAL;
  const width = measure.width(text.text, size, 'regular');
  const left = text.align === 'left' ? x : text.align === 'right' ? x - width : x - width / 2;
  const high = text.height * placing.scale.y;
  const air = AIR * high;
  return {
    under: { kind: 'fill', box: [left - air, y - air, left + width + air, y + high + air], colour: PAPER },
    words: { kind: 'text', at: [left, y], size, text: text.text, weight: 'regular', colour: INK },
  };
}
