/** The printed sheets as files: each sheet as one PDF, and each of its pages as an SVG of the same size and marks. */
import { strToU8 } from 'fflate';
import type { PlacedMovement } from '../../planting/placed.ts';
import { FORMATS } from '../formats/formats.ts';
import type { SheetKind } from '../sheetKinds.ts';
import { pageSvg } from './pageSvg.ts';
import type { SheetSettings } from './paper.ts';
import { writePdf } from './pdf.ts';
import { printedSheetsOf } from './printedSheets.ts';

export type PrintedFormat = typeof FORMATS.pdf.name | typeof FORMATS.svg.name;

/** A file that is ready to be written. */
export interface PrintedFile {
  /** Plain ASCII, safe on every file system: "back-plate-marked-face-numbers.pdf", "…-numbers-page-1.svg". */
  readonly name: string;
  readonly bytes: Uint8Array;
  readonly format: PrintedFormat;
  readonly kind: SheetKind;
}

/** The sheets as files, a sheet's pages after it: the same placed movement and settings give the same bytes. */
export function printedFilesOf(
  placed: PlacedMovement,
  settings: SheetSettings,
  formats: readonly PrintedFormat[] = [FORMATS.pdf.name, FORMATS.svg.name],
): readonly PrintedFile[] {
  const { fonts } = settings;
  const { date } = placed.movement;
  return printedSheetsOf(placed, settings).flatMap(({ stem, name, kind, title, pages }): PrintedFile[] => {
    const digits = String(pages.length).length;
    const svgs = formats.includes(FORMATS.svg.name)
      ? pages.map((page, index): PrintedFile => {
          const text = pageSvg(page, (mark) => fonts.width(mark.text, mark.size, mark.weight));
          const number = String(index + 1).padStart(digits, '0');
          return {
            name: `${stem}-page-${number}${FORMATS.svg.ending}`,
            bytes: strToU8(text),
            format: FORMATS.svg.name,
            kind: 'page',
          };
        })
      : [];
    const pdf = formats.includes(FORMATS.pdf.name)
      ? [{ name, bytes: writePdf(pages, fonts, { title, date }), format: FORMATS.pdf.name, kind }]
      : [];
    return [...pdf, ...svgs];
  });
}

/** The sheets as PDF files only. */
export const pdfSheetsOf = (placed: PlacedMovement, settings: SheetSettings): readonly PrintedFile[] =>
  printedFilesOf(placed, settings, [FORMATS.pdf.name]);
