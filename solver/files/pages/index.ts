/** Printed sheets: pages of marks at true size, as PDF and SVG. Start with `page.ts`, then `printedSheets.ts`. */
export { pageSvg } from './pageSvg.ts';
export { BAR, type Calibration, PAPERS, type PaperName, type SheetSettings, scalesOf } from './paper.ts';
export { printedFilesOf } from './printedFiles.ts';
export { type PrintedSheet, printedSheetsOf } from './printedSheets.ts';
export { type FontBytes, SheetFonts } from './sheetFonts.ts';
