/** Every printed sheet of a movement as pages: numbers, context, step cards, distances for each plate; parts and readings. */
import type { PlacedMovement } from '../../planting/placed.ts';
import { plateDrawing, seenHoles } from '../draw/plateDrawing.ts';
import type { Face } from '../drawing.ts';
import { holesOf } from '../holes.ts';
import { platesOf, plateViewOf } from '../plateView.ts';
import { faceStem, fileStemsOf } from '../sheetNames.ts';
import { markingPlan } from '../steps/markingSteps.ts';
import { arborStripPages } from './arborStrips.ts';
import { CAPITAL } from './drawingMarks.ts';
import type { Page } from './page.ts';
import type { SheetSettings } from './paper.ts';
import { partsTables } from './partsTables.ts';
import { distanceTables, readingTables, stepsTable } from './recordTables.ts';
import { stepCardPages } from './stepCards.ts';
import { tablePages } from './tablePages.ts';
import { trueSizePages } from './trueSize.ts';

export interface PrintedSheet {
  /** File name, with its ending. */
  readonly name: string;
  readonly title: string;
  readonly pages: readonly Page[];
}

/** A numbering that is not known before the pages are laid out: laid out once for the count, then for the words. */
type Layout = (sheetOf: (index: number) => string) => readonly Page[];

function numbered(parts: readonly Layout[]): readonly Page[] {
  const counts = parts.map((layout) => layout(() => '0 of 0').length);
  const total = counts.reduce((sum, count) => sum + count, 0);
  let before = 0;
  return parts.flatMap((layout, index) => {
    const first = before;
    before += counts[index] ?? 0;
    return layout((page) => `${first + page + 1} of ${total}`);
  });
}

/** The sheets as pages: for the preview, and for the files. */
export function printedSheetsOf(placed: PlacedMovement, settings: SheetSettings): readonly PrintedSheet[] {
  const stems = fileStemsOf(placed.movement);
  const sheets = platesOf(placed.movement).flatMap((plate, index) =>
    plateSheets(placed, plate, stems[index] ?? 'plate', settings),
  );
  const { title } = placed.movement;
  const parts = numbered([
    (sheetOf) => {
      const words = { kind: 'Parts list', subject: 'Wheels, bearings, posts' };
      return tablePages(placed, settings, words, partsTables(placed), sheetOf, true);
    },
    (sheetOf) => arborStripPages(placed, settings, sheetOf),
  ]);
  const readings = numbered([
    (sheetOf) => {
      const words = { kind: 'Readings record', subject: 'What was measured, with what, and when' };
      return tablePages(placed, settings, words, readingTables(placed), sheetOf);
    },
  ]);
  return [
    ...sheets,
    { name: 'parts.pdf', title: `${title}: parts`, pages: parts },
    { name: 'readings.pdf', title: `${title}: readings`, pages: readings },
  ];
}

function plateSheets(
  placed: PlacedMovement,
  plate: string | undefined,
  stem: string,
  settings: SheetSettings,
): PrintedSheet[] {
  const view = plateViewOf(placed.movement, plate);
  const other: Face = view.face === 'up' ? 'down' : 'up';
  const { title } = placed.movement;
  /** Names are placed by the width of the type that they are set in. */
  const widthOf = (text: string, height: number) => settings.fonts.width(text, height / CAPITAL, 'regular');
  const holes = seenHoles(view, holesOf(placed, plate));
  const named = (face: Face, what: string) => `${stem}-${faceStem(face)}-${what}.pdf`;
  const numbersOf = (face: Face): PrintedSheet => {
    const subject = plateViewOf(placed.movement, plate, face).faceLabel;
    const drawing = plateDrawing(placed, { plate, face, density: 'numbers', caption: false, widthOf });
    const pages = numbered([
      (sheetOf) => trueSizePages(placed, drawing, settings, { kind: 'Numbers sheet', subject }, sheetOf),
      (sheetOf) =>
        tablePages(
          placed,
          settings,
          { kind: 'Numbers sheet', subject },
          [stepsTable(markingPlan(placed, { plate, face }))],
          sheetOf,
        ),
    ]);
    return { name: named(face, 'numbers'), title: `${title}: ${subject}, numbers`, pages };
  };
  const subject = view.faceLabel;
  const context = plateDrawing(placed, { plate, face: view.face, density: 'context', caption: false, widthOf });
  const sheets: PrintedSheet[] = [
    numbersOf(view.face),
    numbersOf(other),
    {
      name: named(view.face, 'context'),
      title: `${title}: ${subject}, context`,
      pages: numbered([
        (sheetOf) => trueSizePages(placed, context, settings, { kind: 'Context sheet', subject }, sheetOf),
      ]),
    },
    {
      name: named(view.face, 'cards'),
      title: `${title}: ${subject}, step cards`,
      pages: numbered([(sheetOf) => stepCardPages(placed, { plate, face: view.face }, settings, sheetOf)]),
    },
    {
      name: `${stem}-distances.pdf`,
      title: `${title}: ${view.plateLabel}, distances`,
      pages: numbered([
        (sheetOf) =>
          tablePages(
            placed,
            settings,
            { kind: 'Distances', subject: view.plateLabel },
            distanceTables(placed, holes),
            sheetOf,
            true,
          ),
      ]),
    },
  ];
  return sheets.filter(({ pages }) => pages.length > 0);
}
