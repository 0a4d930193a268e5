/**
 * Drawings at true size on paper: on one page where they fit, else in tiles that share a strip, with marks to lay the
 * tiles over each other. Every page carries both scale bars.
 */
import type { PlacedMovement } from '../../planting/placed.ts';
import type { Drawing } from '../drawing.ts';
import { marksOfDrawing } from './drawingMarks.ts';
import { type Box, FAINT, line, type Page, type PageMark, SOFT } from './page.ts';
import { framedPage, type SheetSettings, scalesOf, type TitleWords, windowOf } from './paper.ts';
import type { Pen } from './pen.ts';

/** Strip shared by neighbouring tiles, mm. */
const OVERLAP = 10;

/** How a drawing is laid over pages. */
export interface Tiling {
  readonly landscape: boolean;
  readonly columns: number;
  readonly rows: number;
  /** Size of a tile on the drawing, mm, and the strip that neighbours share. */
  readonly width: number;
  readonly height: number;
  readonly overlap: number;
}

/** The tiling that takes fewest pages; upright paper where both ways take the same. */
export function tilingOf(extents: Drawing['extents'], settings: SheetSettings): Tiling {
  const overlap = settings.overlap ?? OVERLAP;
  const { x: sx, y: sy } = scalesOf(settings.calibration);
  const [upright, across] = [false, true].map((landscape): Tiling => {
    const [minX, minY, maxX, maxY] = windowOf(settings, landscape, true);
    const [width, height] = [(maxX - minX) / sx, (maxY - minY) / sy];
    const count = (span: number, tile: number) => Math.max(1, Math.ceil((span - overlap) / (tile - overlap) - 1e-9));
    const columns = count(extents[2] - extents[0], width);
    const rows = count(extents[3] - extents[1], height);
    return { landscape, columns, rows, width, height, overlap };
  }) as [Tiling, Tiling]; // two ways in, two tilings out
  return across.columns * across.rows < upright.columns * upright.rows ? across : upright;
}

/** Beyond this many tiles nobody pastes paper together: the drawing is shown reduced on one page, and says so. */
const MOST_TILES = 60;

/** The pages of a drawing at true size; one too large for paper comes reduced, without bars, with its scale stated. */
export function trueSizePages(
  placed: PlacedMovement,
  drawing: Drawing,
  settings: SheetSettings,
  words: Pick<TitleWords, 'kind' | 'subject'>,
): readonly Page[] {
  const tiling = tilingOf(drawing.extents, settings);
  if (tiling.columns * tiling.rows > MOST_TILES) return [reducedPage(placed, drawing, settings, words)];
  const pages: Page[] = [];
  const many = tiling.columns * tiling.rows > 1;
  for (let row = tiling.rows - 1; row >= 0; row--) {
    for (let column = 0; column < tiling.columns; column++) {
      const scale = `Scale 1:1. Print at actual size, without fitting. Both bars must measure 150.00 mm.${many ? ` Tile ${tileName(tiling, column, row)}.` : ''}`;
      const { pen, window } = framedPage(
        placed,
        settings,
        { ...words, scale },
        {
          landscape: tiling.landscape,
          bars: true,
        },
      );
      const placing = placingOf(drawing, tiling, settings, window, column, row);
      pen.clip(window, marksOfDrawing(drawing, placing, settings.fonts));
      if (many) tileMarks(pen, tiling, settings, window, column, row);
      pages.push(pen.page());
    }
  }
  return pages;
}

function reducedPage(
  placed: PlacedMovement,
  drawing: Drawing,
  settings: SheetSettings,
  words: Pick<TitleWords, 'kind' | 'subject'>,
): Page {
  const [minX, minY, maxX, maxY] = drawing.extents;
  const landscape = maxX - minX > maxY - minY;
  const room = windowOf(settings, landscape, false);
  const fit = Math.min((room[2] - room[0]) / (maxX - minX), (room[3] - room[1]) / (maxY - minY));
  // A whole number, so that the scale can be said.
  const reduction = Math.ceil(1 / fit);
  const scale = `Scale 1:${reduction}. Too large for paper at true size: not a pattern.`;
  const { pen, window } = framedPage(placed, settings, { ...words, scale }, { landscape });
  const by = 1 / reduction;
  const shift = [
    (window[0] + window[2] - (minX + maxX) * by) / 2,
    (window[1] + window[3] - (minY + maxY) * by) / 2,
  ] as const;
  pen.clip(window, marksOfDrawing(drawing, { scale: { x: by, y: by }, shift }, settings.fonts));
  return pen.page();
}

/** Rows are lettered from the top, columns numbered from the left: A1 is the upper left tile. */
const tileName = (tiling: Tiling, column: number, row: number): string =>
  `${String.fromCharCode(65 + tiling.rows - 1 - row)}${column + 1}`;

function placingOf(
  drawing: Drawing,
  tiling: Tiling,
  settings: SheetSettings,
  window: Box,
  column: number,
  row: number,
) {
  const scale = scalesOf(settings.calibration);
  const [minX, minY, maxX, maxY] = drawing.extents;
  const whole = (count: number, tile: number) => count * tile - (count - 1) * tiling.overlap;
  // What the tiles cover beyond the drawing is shared between both sides.
  const left = minX - (whole(tiling.columns, tiling.width) - (maxX - minX)) / 2;
  const low = minY - (whole(tiling.rows, tiling.height) - (maxY - minY)) / 2;
  const x = left + column * (tiling.width - tiling.overlap);
  const y = low + row * (tiling.height - tiling.overlap);
  return { scale, shift: [window[0] - x * scale.x, window[1] - y * scale.y] as const };
}

/** Lines through the middle of each shared strip with crosses at a quarter and three quarters: tiles are laid cross on cross. */
function tileMarks(pen: Pen, tiling: Tiling, settings: SheetSettings, window: Box, column: number, row: number): void {
  const { x: sx, y: sy } = scalesOf(settings.calibration);
  const dashed = line(0.13, FAINT, [2, 2]);
  const half = tiling.overlap / 2;
  const [minX, minY, maxX, maxY] = window;
  const upright = (x: number, neighbour: number): void => {
    pen.rule(x, minY, x, maxY, dashed);
    for (const part of [0.25, 0.75]) cross(pen, x, minY + (maxY - minY) * part);
    pen.text(x, maxY - 3, `joins ${tileName(tiling, neighbour, row)}`, { size: 2.2, colour: SOFT, align: 'middle' });
  };
  const level = (y: number, neighbour: number): void => {
    pen.rule(minX, y, maxX, y, dashed);
    for (const part of [0.25, 0.75]) cross(pen, minX + (maxX - minX) * part, y);
    pen.text(minX + 2, y + 0.8, `joins ${tileName(tiling, column, neighbour)}`, { size: 2.2, colour: SOFT });
  };
  if (column > 0) upright(minX + half * sx, column - 1);
  if (column < tiling.columns - 1) upright(maxX - half * sx, column + 1);
  if (row > 0) level(minY + half * sy, row - 1);
  if (row < tiling.rows - 1) level(maxY - half * sy, row + 1);
}

function cross(pen: Pen, x: number, y: number): void {
  const arm = 3;
  const marks: readonly PageMark[] = [
    { kind: 'line', from: [x - arm, y], to: [x + arm, y], ink: line(0.13) },
    { kind: 'line', from: [x, y - arm], to: [x, y + arm], ink: line(0.13) },
    { kind: 'circle', centre: [x, y], radius: 1.2, ink: line(0.13) },
  ];
  pen.marks.push(...marks);
}
