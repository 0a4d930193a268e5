/** Paper, the frame of a page, its title block and the bars by which the print is checked. */
import type { PlacedMovement } from '../../planting/placed.ts';
import type { SheetSpeech } from '../sheetWords.ts';
import { type Box, FAINT, line, type Page, SOFT, type TypeMeasure } from './page.ts';
import { Pen } from './pen.ts';
import type { SheetFonts } from './sheetFonts.ts';

export type PaperName = 'A4' | 'A3' | 'Letter';

/** Portrait sizes, mm: ISO 216, and US Letter 8½ × 11 in. */
export const PAPERS: Readonly<Record<PaperName, { readonly width: number; readonly height: number }>> = {
  A4: { width: 210, height: 297 },
  A3: { width: 297, height: 420 },
  Letter: { width: 215.9, height: 279.4 },
};

/** Length of the scale bars, mm. */
export const BAR = 150;

/** What the maker measured on his own print of the two bars, mm. */
export interface Calibration {
  readonly xBar: number;
  readonly yBar: number;
}

/** The maker's paper and printer. */
export interface SheetSettings {
  readonly fonts: SheetFonts;
  /** Whoever speaks for the document. */
  readonly words: SheetSpeech;
  readonly paper?: PaperName | undefined;
  readonly calibration?: Calibration | undefined;
  /** How far neighbouring tiles share the drawing, mm (default 10). */
  readonly overlap?: number | undefined;
}

/** Bars further off than this are no printer's error, mm: 10 %. */
const LARGEST_CORRECTION = 15;

/** Factors by which a page is drawn larger, so that the maker's printer brings it to true size. */
export function scalesOf(calibration: Calibration | undefined): { readonly x: number; readonly y: number } {
  if (!calibration) return { x: 1, y: 1 };
  for (const [name, bar] of Object.entries<number>({ ...calibration })) {
    if (!(Math.abs(bar - BAR) <= LARGEST_CORRECTION)) {
      throw new RangeError(
        `${name} ${bar}: expected the measured length of the ${BAR} mm bar, within ${LARGEST_CORRECTION} mm of it`,
      );
    }
  }
  return { x: BAR / calibration.xBar, y: BAR / calibration.yBar };
}

/** Unprintable edge of common printers, and air, mm. */
export const MARGIN = 8;
const TITLE_HEIGHT = 19;
const BAR_STRIP = 9;

/** What the title block says. */
export interface TitleWords {
  readonly kind: string;
  readonly subject: string;
  readonly scale: string;
}

/** A page with its frame and title block drawn. */
export interface FramedPage {
  readonly pen: Pen;
  /** Free for the sheet's own contents, mm. */
  readonly window: Box;
}

/** Width and height of the chosen paper, mm, upright unless asked otherwise. */
export function paperSize(
  settings: SheetSettings,
  landscape: boolean,
): { readonly width: number; readonly height: number } {
  const { width, height } = PAPERS[settings.paper ?? 'A4'];
  return landscape ? { width: height, height: width } : { width, height };
}

/** The window of a page: with room for the bars where the sheet is at true size. */
export function windowOf(settings: SheetSettings, landscape: boolean, hasBars: boolean): Box {
  const { width, height } = paperSize(settings, landscape);
  const strip = hasBars ? BAR_STRIP : 0;
  return [MARGIN + strip, MARGIN + TITLE_HEIGHT + (hasBars ? strip : 3), width - MARGIN, height - MARGIN];
}

/** A new page with its title block; its number is put in by `withSheetNumber` when all pages are there. */
export function framedPage(
  placed: PlacedMovement,
  settings: SheetSettings,
  words: TitleWords,
  options: { readonly landscape?: boolean; readonly bars?: boolean } = {},
): FramedPage {
  const landscape = options.landscape ?? false;
  const { width, height } = paperSize(settings, landscape);
  const pen = new Pen(settings.fonts, width, height);
  titleBlock(pen, placed, words);
  if (options.bars) scaleBars(pen, settings);
  return { pen, window: windowOf(settings, landscape, options.bars ?? false) };
}

function titleBlock(pen: Pen, placed: PlacedMovement, words: TitleWords): void {
  const { movement } = placed;
  const [left, right, top] = [MARGIN, pen.width - MARGIN, MARGIN + TITLE_HEIGHT];
  const third = right - 46;
  const second = third - 50;
  pen.rule(left, top, right, top, line(0.5));
  pen.rule(left, top - 0.9, right, top - 0.9, line(0.13));
  for (const x of [second, third]) pen.rule(x, MARGIN, x, top - 3, line(0.13, FAINT));
  const room = second - left - 4;
  pen.text(left, top - 7, movement.title, { size: 4.6, weight: 'bold', within: room });
  pen.text(left, top - 12, words.subject, { size: 3, within: room });
  pen.text(left, top - 17, `${words.kind}. Drawn with Depthwright.`, { size: 2.4, colour: SOFT, within: room });
  pen.paragraph(second + 3, top - 6, words.scale, third - second - 6, { size: 2.5 });
  const rows = [
    ['Revision', movement.revision],
    ['Date', movement.date ?? 'none given'],
    ['Sheet', ''],
  ] as const;
  rows.forEach(([name, value], index) => {
    const y = top - 6 - index * 5;
    pen.text(third + 3, y, name, { size: 2.4, colour: SOFT });
    pen.text(right, y, value, { size: 3, weight: 'bold', align: 'right', within: 30 });
  });
}

/** The page with its number in the title block, as "2 of 5". */
export function withSheetNumber(page: Page, words: string, measure: TypeMeasure): Page {
  const pen = new Pen(measure, page.width, page.height);
  const y = MARGIN + TITLE_HEIGHT - 6 - 2 * 5;
  pen.text(page.width - MARGIN, y, words, { size: 3, weight: 'bold', align: 'right', within: 30 });
  return { ...page, marks: [...page.marks, ...pen.marks] };
}

/** Both bars, drawn with the same correction as the sheet: after calibration they measure 150 on the maker's print. */
function scaleBars(pen: Pen, settings: SheetSettings): void {
  const { x: sx, y: sy } = scalesOf(settings.calibration);
  const [x0, y0] = [MARGIN + BAR_STRIP, MARGIN + TITLE_HEIGHT + BAR_STRIP];
  const [x, y] = [MARGIN + 3.5, MARGIN + TITLE_HEIGHT + 4.5];
  const thin = line(0.15);
  pen.rule(x0, y, x0 + BAR * sx, y, thin);
  pen.rule(x, y0, x, y0 + BAR * sy, thin);
  for (let mm = 0; mm <= BAR; mm += 10) {
    const tick = mm % 50 === 0 ? 2 : 1.2;
    pen.rule(x0 + mm * sx, y - tick, x0 + mm * sx, y + (mm % BAR === 0 ? tick : 0), thin);
    pen.rule(x - tick, y0 + mm * sy, x + (mm % BAR === 0 ? tick : 0), y0 + mm * sy, thin);
  }
  const words = settings.calibration ? 'corrected for your printer' : 'measure me';
  pen.text(x0 + BAR * sx + 2, y - 0.8, `X ${BAR} mm, ${words}`, { size: 2.2, colour: SOFT });
  pen.text(x - 2.2, y0 + BAR * sy + 2, `Y ${BAR}`, { size: 2.2, colour: SOFT });
}
