/** Tables over as many pages as they need: heads repeated, rows ruled, cells wrapped, boxes left blank where asked. */
import type { PlacedMovement } from '../../planting/placed.ts';
import { type Box, FAINT, line, type Page, SOFT } from './page.ts';
import { framedPage, type SheetSettings, type TitleWords } from './paper.ts';
import { LEADING, type Pen } from './pen.ts';

/** A column with its head and its share of the page. */
export interface Column {
  readonly head: string;
  /** Share of the width. */
  readonly weight: number;
  readonly align?: 'left' | 'right' | undefined;
  /** Drawn as an empty box to write in. */
  readonly box?: boolean | undefined;
  readonly bold?: boolean | undefined;
}

/** Rows of text under heads. */
export interface Table {
  readonly heading: string;
  /** A sentence under the heading. */
  readonly note?: string | undefined;
  readonly columns: readonly Column[];
  readonly rows: readonly (readonly string[])[];
}

const SIZE = 2.9;
const PAD = 1.4;
const HEAD_SIZE = 2.4;
/** Smallest that a head may be set, as part of its size: below that it is not read. */
const LEAST_HEAD = 0.7;
const BOX_HEIGHT = 8;

/** The pages of some tables, one after another. */
export function tablePages(
  placed: PlacedMovement,
  settings: SheetSettings,
  words: Omit<TitleWords, 'scale'>,
  tables: readonly Table[],
  landscape = false,
): readonly Page[] {
  const pages: Page[] = [];
  let pen: Pen | undefined;
  let window: Box = [0, 0, 0, 0];
  let y = 0;
  const start = (): Pen => {
    if (pen) pages.push(pen.page());
    const scale = `Lengths in ${placed.movement.display.unit === 'inch' ? 'inches' : 'millimetres'}, angles in degrees.`;
    const framed = framedPage(placed, settings, { ...words, scale }, { landscape });
    pen = framed.pen;
    window = framed.window;
    y = window[3];
    return framed.pen;
  };
  for (const table of tables) {
    let on = pen ?? start();
    const cells = cellsOf(table.columns, window);
    const top = 8 + (table.note === undefined ? 0 : 5);
    if (y - top - 6 - rowHeight(on, table, cells, table.rows[0] ?? []) < window[1]) on = start();
    y = heading(on, table, cells, y - 5);
    for (const row of table.rows) {
      const height = rowHeight(on, table, cells, row);
      if (y - height < window[1]) {
        on = start();
        y = heading(on, { ...table, heading: `${table.heading}, continued`, note: undefined }, cells, y - 5);
      }
      drawRow(on, table, cells, row, y, height);
      y -= height;
    }
    y -= 6;
  }
  if (!pen) start();
  if (pen) pages.push(pen.page());
  return pages;
}

/** Where a column stands on the page, mm. */
interface Cell {
  readonly left: number;
  readonly width: number;
}

function cellsOf(columns: readonly Column[], window: Box): readonly Cell[] {
  const total = columns.reduce((sum, column) => sum + column.weight, 0);
  let left = window[0];
  return columns.map(({ weight }) => {
    const width = ((window[2] - window[0]) * weight) / total;
    const cell = { left, width };
    left += width;
    return cell;
  });
}

function heading(pen: Pen, table: Table, cells: readonly Cell[], top: number): number {
  const [first] = cells;
  const left = first?.left ?? 0;
  const right = cells.reduce((end, cell) => Math.max(end, cell.left + cell.width), left);
  pen.text(left, top, table.heading, { size: 4, weight: 'bold', within: right - left });
  let y = top - 4.5;
  if (table.note !== undefined) {
    y = pen.paragraph(left, y - 0.3, table.note, right - left, { size: 2.6, colour: SOFT }) + 1;
  }
  y -= 2.5;
  table.columns.forEach((column, index) => {
    const cell = cells[index];
    if (!cell) return;
    const x = column.align === 'right' ? cell.left + cell.width - PAD : cell.left + PAD;
    const room = cell.width - PAD;
    // A long head is set smaller, and only then cut.
    const fit = room / Math.max(room, pen.measure.width(column.head, HEAD_SIZE, 'regular'));
    const size = HEAD_SIZE * Math.max(LEAST_HEAD, fit);
    pen.text(x, y, column.head, { size, colour: SOFT, align: column.align, within: room });
  });
  pen.rule(left, y - 1.6, right, y - 1.6, line(0.3));
  return y - 1.6;
}

function linesIn(pen: Pen, column: Column, cell: Cell, text: string): readonly string[] {
  const style = { size: SIZE, weight: column.bold ? 'bold' : 'regular' } as const;
  return pen.linesOf(text, cell.width - 2 * PAD, style);
}

function rowHeight(pen: Pen, table: Table, cells: readonly Cell[], row: readonly string[]): number {
  let lines = 1;
  let least = 0;
  table.columns.forEach((column, index) => {
    const cell = cells[index];
    if (column.box) least = BOX_HEIGHT;
    if (cell) lines = Math.max(lines, linesIn(pen, column, cell, row[index] ?? '').length);
  });
  return Math.max(least, lines * SIZE * LEADING + 1.8);
}

function drawRow(
  pen: Pen,
  table: Table,
  cells: readonly Cell[],
  row: readonly string[],
  top: number,
  height: number,
): void {
  table.columns.forEach((column, index) => {
    const cell = cells[index];
    if (!cell) return;
    if (column.box) {
      pen.box([cell.left + 0.8, top - height + 0.9, cell.left + cell.width - 0.8, top - 0.9], line(0.2, SOFT));
    }
    const weight = column.bold ? 'bold' : 'regular';
    let y = top - SIZE - 0.6;
    for (const text of linesIn(pen, column, cell, row[index] ?? '')) {
      const x = column.align === 'right' ? cell.left + cell.width - PAD : cell.left + PAD;
      pen.text(x, y, text, { size: SIZE, weight, align: column.align, within: cell.width - PAD });
      y -= SIZE * LEADING;
    }
  });
  const last = cells.at(-1);
  pen.rule(cells[0]?.left ?? 0, top - height, (last?.left ?? 0) + (last?.width ?? 0), top - height, line(0.13, FAINT));
}
