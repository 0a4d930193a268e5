/** The marks of a page as PDF operators, in millimetres under one matrix. */
import { pieceBetween, xyOf } from '../../geometry/index.ts';
import type { DrawnVertex } from '../../marking/index.ts';
import { trimmed } from '../../movement/decimal.ts';
import type { Colour, Ink, Page, PageMark, Weight } from './page.ts';
import type { FaceWriter } from './sheetFonts.ts';

/** Decimals of a millimetre. */
const PLACES = 4;
/** Scale to points with more digits than any page needs (a page of 10 m stays true to a nanometre). */
const POINTS_A_MM = '2.834645669291339';
/** One Bézier piece over 90° leaves the circle by 2.7e-4 of its radius, and by the sixth power less over 22.5°: 7e-8. */
const PIECE = Math.PI / 8;

const n = (value: number): string => trimmed(value, PLACES);

/** The content stream of a page. */
export function contentOf(page: Page, faces: Readonly<Record<Weight, FaceWriter>>): string {
  const words = [`${POINTS_A_MM} 0 0 ${POINTS_A_MM} 0 0 cm`, '1 J 1 j'];
  for (const mark of page.marks) put(mark, words, faces);
  return `${words.join('\n')}\n`;
}

function put(mark: PageMark, words: string[], faces: Readonly<Record<Weight, FaceWriter>>): void {
  switch (mark.kind) {
    case 'line':
      words.push(inked(mark.ink), `${n(mark.from[0])} ${n(mark.from[1])} m ${n(mark.to[0])} ${n(mark.to[1])} l S`);
      return;
    case 'circle':
      words.push(inked(mark.ink), ...arcWords(mark.centre, mark.radius, 0, 2 * Math.PI, true), 'h S');
      return;
    case 'arc': {
      const turn = 2 * Math.PI;
      const sweep = (((mark.end - mark.start) % turn) + turn) % turn || turn;
      words.push(inked(mark.ink), ...arcWords(mark.centre, mark.radius, mark.start, sweep, true), 'S');
      return;
    }
    case 'path':
      words.push(inked(mark.ink), ...pathWords(mark.vertices, mark.closed), mark.closed ? 'h S' : 'S');
      return;
    case 'fill': {
      const [minX, minY, maxX, maxY] = mark.box;
      words.push(`${rgb(mark.colour)} rg ${n(minX)} ${n(minY)} ${n(maxX - minX)} ${n(maxY - minY)} re f`);
      return;
    }
    case 'text': {
      const font = mark.weight === 'bold' ? 'FB' : 'FR';
      const [cos, sin] = [Math.cos(mark.turned ?? 0), Math.sin(mark.turned ?? 0)];
      const matrix = `${trimmed(cos, 6)} ${trimmed(sin, 6)} ${trimmed(-sin, 6)} ${trimmed(cos, 6)} ${n(mark.at[0])} ${n(mark.at[1])} Tm`;
      words.push(
        `BT ${rgb(mark.colour)} rg /${font} ${n(mark.size)} Tf ${matrix} <${faces[mark.weight].encode(mark.text)}> Tj ET`,
      );
      return;
    }
    case 'clip': {
      const [minX, minY, maxX, maxY] = mark.box;
      words.push(`q ${n(minX)} ${n(minY)} ${n(maxX - minX)} ${n(maxY - minY)} re W n`);
      for (const inner of mark.marks) put(inner, words, faces);
      words.push('Q');
    }
  }
}

const rgb = (colour: Colour): string => colour.map((part) => trimmed(part, 3)).join(' ');

function inked({ width, colour, dash }: Ink): string {
  return `${n(width)} w ${rgb(colour)} RG [${(dash ?? []).map(n).join(' ')}] 0 d`;
}

function pathWords(vertices: readonly DrawnVertex[], closed: boolean): string[] {
  const [first] = vertices;
  if (!first) return [];
  const words = [`${n(first.x)} ${n(first.y)} m`];
  vertices.forEach((from, index) => {
    const isLast = index === vertices.length - 1;
    const to = isLast ? first : vertices[index + 1];
    if (!to || (isLast && !closed)) return;
    const piece = pieceBetween(from, to);
    if (piece.kind === 'line') {
      words.push(`${n(to.x)} ${n(to.y)} l`);
      return;
    }
    const start = Math.atan2(from.y - piece.centre.y, from.x - piece.centre.x);
    words.push(
      ...arcWords(xyOf(piece.centre), piece.radius, start, from.bulge > 0 ? piece.sweep : -piece.sweep, false),
    );
  });
  return words;
}

/** An arc as Bézier pieces of at most 22.5°; with its starting move where it begins a path. */
function arcWords(
  [cx, cy]: readonly [number, number],
  radius: number,
  start: number,
  sweep: number,
  begins: boolean,
): string[] {
  const at = (angle: number) => [cx + radius * Math.cos(angle), cy + radius * Math.sin(angle)] as const;
  const count = Math.max(1, Math.ceil(Math.abs(sweep) / PIECE - 1e-9));
  const step = sweep / count;
  const handle = (4 / 3) * Math.tan(step / 4) * radius;
  const words: string[] = [];
  if (begins) words.push(`${at(start).map(n).join(' ')} m`);
  for (let index = 0; index < count; index++) {
    const [a, b] = [start + index * step, start + (index + 1) * step];
    const [p, q] = [at(a), at(b)];
    const first = [p[0] - handle * Math.sin(a), p[1] + handle * Math.cos(a)];
    const second = [q[0] + handle * Math.sin(b), q[1] - handle * Math.cos(b)];
    words.push(`${[...first, ...second, ...q].map(n).join(' ')} c`);
  }
  return words;
}
