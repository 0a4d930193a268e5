/** Arbors as dimensioned strips: every shoulder measured from one end, as the maker turns them. */

import { heightsOfArbor } from '../../clearance/bodies/index.ts';
import { namer } from '../../marking/index.ts';
import { decimalLengthText, unitName } from '../../movement/decimal.ts';
import type { Arbor } from '../../movement/schema.ts';
import type { PlacedMovement } from '../../planting/placed.ts';
import { sizeOfWheel } from '../../teeth/index.ts';
import { INK, line, type Page, SOFT } from './page.ts';
import { framedPage, type SheetSettings } from './paper.ts';
import type { Pen } from './pen.ts';

/** A piece of an arbor between two heights. */
export interface ArborPiece {
  readonly name: string;
  readonly from: number;
  readonly to: number;
  readonly diameter: number;
  readonly kind: 'body' | 'pivot' | 'wheel' | 'collar';
}

/** Pieces of an arbor by height, its lowest end first; none where the movement states no heights for it. */
export function arborPieces(placed: PlacedMovement, arbor: Arbor): readonly ArborPiece[] {
  const pieces: ArborPiece[] = [];
  const plates = new Map(placed.movement.plates.map((plate) => [plate.id as string, plate]));
  for (const bearing of arbor.bearings) {
    const at = bearing.at ?? (bearing.plate === undefined ? undefined : plates.get(bearing.plate)?.levels.from);
    if (at === undefined) continue;
    pieces.push({ name: 'pivot', from: at, to: at + bearing.length, diameter: bearing.pivot, kind: 'pivot' });
  }
  for (const wheel of placed.movement.wheels) {
    if (wheel.arbor !== arbor.id) continue;
    const diameter = 2 * sizeOfWheel(wheel, placed.movement).tipRadius;
    const name = `${wheel.name ?? wheel.id} (${wheel.teeth})`;
    pieces.push({ name, from: wheel.level, to: wheel.level + wheel.thickness, diameter, kind: 'wheel' });
  }
  for (const collar of arbor.collars) {
    pieces.push({ name: 'collar', from: collar.from, to: collar.to, diameter: collar.diameter, kind: 'collar' });
  }
  const whole = heightsOfArbor(arbor, placed.movement);
  const body = whole && bodyOf(arbor, pieces, whole);
  return [...pieces, ...(body ? [body] : [])].sort((a, b) => a.from - b.from || a.to - b.to);
}

/** The arbor's own diameter between its shoulders: a thinner pivot at either end takes the body's place there. */
function bodyOf(
  arbor: Arbor,
  pieces: readonly ArborPiece[],
  whole: Pick<ArborPiece, 'from' | 'to'>,
): ArborPiece | undefined {
  const pivots = pieces.filter((piece) => piece.kind === 'pivot' && piece.diameter < arbor.diameter);
  const low = pivots.find((piece) => piece.from <= whole.from);
  const high = pivots.find((piece) => piece.to >= whole.to && piece !== low);
  const from = low ? low.to : whole.from;
  const to = high ? high.from : whole.to;
  return to > from ? { name: 'arbor', from, to, diameter: arbor.diameter, kind: 'body' } : undefined;
}

const STRIP_HEIGHT = 54;

/** One strip under another; arbors without heights are left out. */
export function arborStripPages(placed: PlacedMovement, settings: SheetSettings): readonly Page[] {
  const label = namer(placed.movement);
  const strips = placed.movement.arbors
    .map((arbor) => ({ arbor, pieces: arborPieces(placed, arbor) }))
    .filter(({ pieces }) => pieces.length > 0);
  const pages: Page[] = [];
  const unit = unitName(placed.movement.display);
  const words = {
    kind: 'Arbor strips',
    subject: 'Shoulders from the lower end',
    scale: `Each strip to its own scale. Lengths in ${unit}.`,
  };
  for (let at = 0; at < strips.length; ) {
    const { pen, window } = framedPage(placed, settings, words);
    let y = window[3];
    while (at < strips.length && y - STRIP_HEIGHT >= window[1]) {
      const strip = strips[at++];
      if (strip) {
        drawStrip(pen, placed, label(strip.arbor.id), strip.pieces, [window[0], y - STRIP_HEIGHT, window[2], y]);
      }
      y -= STRIP_HEIGHT;
    }
    pages.push(pen.page());
  }
  return pages;
}

/** Tallest part drawn at its own size against the strip, mm; wheels beyond it are drawn shorter and say their diameter. */
const TALLEST = 11;
/** Short arbors are not blown up beyond this. */
const LARGEST_SCALE = 6;

function drawStrip(
  pen: Pen,
  placed: PlacedMovement,
  name: string,
  pieces: readonly ArborPiece[],
  [left, low, right, top]: readonly [number, number, number, number],
): void {
  const show = (mm: number) => decimalLengthText(mm, placed.movement.display);
  const from = Math.min(...pieces.map((piece) => piece.from));
  const to = Math.max(...pieces.map((piece) => piece.to));
  const scale = Math.min(LARGEST_SCALE, (right - left - 20) / Math.max(to - from, 1e-6));
  const axis = top - 19.5;
  const x = (height: number) => left + 10 + (height - from) * scale;
  pen.text(left, top - 5, name, { size: 4, weight: 'bold' });
  pen.text(right, top - 5, `overall ${show(to - from)}`, { size: 3, align: 'right' });
  pen.rule(left + 5, axis, x(to) + 5, axis, line(0.13, SOFT, [6, 1, 0.3, 1]));
  for (const { from: a, to: b, diameter, kind } of pieces) {
    const half = Math.min(TALLEST, (diameter * scale) / 2);
    pen.box([x(a), axis - half, x(b), axis + half], line(kind === 'wheel' ? 0.35 : 0.25, kind === 'body' ? SOFT : INK));
  }
  const heights = [
    ...new Set(pieces.flatMap((piece) => [piece.from, piece.to]).map((h) => Math.round(h * 1e6) / 1e6)),
  ].sort((a, b) => a - b);
  let last = Number.NEGATIVE_INFINITY;
  for (const height of heights) {
    const at = Math.max(x(height), last + 3.2);
    pen.rule(x(height), axis - TALLEST - 1, at, axis - TALLEST - 3, line(0.13, SOFT));
    const text = show(height - from);
    const width = pen.measure.width(text, 2.6, 'regular');
    pen.marks.push({
      kind: 'text',
      at: [at + 0.9, axis - TALLEST - 3.5 - width],
      size: 2.6,
      text,
      weight: 'regular',
      colour: INK,
      turned: Math.PI / 2,
    });
    last = at;
  }
  const words = pieces
    .filter((piece) => piece.kind !== 'body')
    .map((piece) => `${piece.name}: ${show(piece.from - from)} to ${show(piece.to - from)}, Ø ${show(piece.diameter)}`);
  pen.paragraph(left, low + 6.2, words.join('.  '), right - left, { size: 2.2, colour: SOFT });
}
