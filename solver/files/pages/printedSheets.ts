/** Every printed sheet of a movement as pages: numbers, context, step cards, distances for each plate; parts and readings. */

import type { Face, PlateView } from '../../marking/index.ts';
import { holesOf, markingPlan, platesOf, plateViewOf } from '../../marking/index.ts';
import type { PlacedMovement } from '../../planting/placed.ts';
import { plateDrawing, seenHoles } from '../draw/plateDrawing.ts';
import { faceStem, fileStemsOf } from '../sheetNames.ts';
import { arborStripPages } from './arborStrips.ts';
import { CAPITAL } from './drawingMarks.ts';
import type { Page } from './page.ts';
import { type SheetSettings, withSheetNumber } from './paper.ts';
import { partsTables } from './partsTables.ts';
import { readingTables } from './readingTables.ts';
import { distanceTables, stepsTable } from './recordTables.ts';
import { stepCardPages } from './stepCards.ts';
import { tablePages } from './tablePages.ts';
import { trueSizePages } from './trueSize.ts';

/** One sheet of a movement, a page or more. */
export interface PrintedSheet {
  /** File name, with its ending. */
  readonly name: string;
  readonly title: string;
  readonly pages: readonly Page[];
}

/** The pages of the parts, numbered through. */
function numbered(settings: SheetSettings, ...parts: readonly (readonly Page[])[]): readonly Page[] {
  const pages = parts.flat();
  return pages.map((page, index) => withSheetNumber(page, `${index + 1} of ${pages.length}`, settings.fonts));
}

/** The sheets as pages: for the preview, and for the files. */
export function printedSheetsOf(placed: PlacedMovement, settings: SheetSettings): readonly PrintedSheet[] {
  const stems = fileStemsOf(placed.movement);
  const sheets = platesOf(placed.movement).flatMap((plate, index) =>
    plateSheets(placed, plate, stems[index] ?? 'plate', settings),
  );
  const { title } = placed.movement;
  const partsWords = { kind: 'Parts list', subject: 'Wheels, bearings, posts' };
  const parts = numbered(
    settings,
    tablePages(placed, settings, partsWords, partsTables(placed, settings.words(placed.movement)), true),
    arborStripPages(placed, settings),
  );
  const recordWords = { kind: 'Readings record', subject: 'What was measured, with what, and when' };
  const readings = numbered(settings, tablePages(placed, settings, recordWords, readingTables(placed)));
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
  const named = (seen: PlateView, what: string) => `${stem}-${faceStem(seen)}-${what}.pdf`;
  const numbersOf = (face: Face): PrintedSheet => {
    const seen = plateViewOf(placed.movement, plate, face);
    const subject = seen.faceLabel;
    const drawing = plateDrawing(placed, { plate, face, density: 'numbers', caption: false, widthOf });
    const words = { kind: 'Numbers sheet', subject };
    const pages = numbered(
      settings,
      trueSizePages(placed, drawing, settings, words),
      tablePages(placed, settings, words, [
        stepsTable(markingPlan(placed, { plate, face }), settings.words(placed.movement)),
      ]),
    );
    return { name: named(seen, 'numbers'), title: `${title}: ${subject}, numbers`, pages };
  };
  const subject = view.faceLabel;
  const context = plateDrawing(placed, { plate, face: view.face, density: 'context', caption: false, widthOf });
  const sheets: PrintedSheet[] = [
    numbersOf(view.face),
    numbersOf(other),
    {
      name: named(view, 'context'),
      title: `${title}: ${subject}, context`,
      pages: numbered(settings, trueSizePages(placed, context, settings, { kind: 'Context sheet', subject })),
    },
    {
      name: named(view, 'cards'),
      title: `${title}: ${subject}, step cards`,
      pages: numbered(settings, stepCardPages(placed, { plate, face: view.face }, settings)),
    },
    {
      name: `${stem}-distances.pdf`,
      title: `${title}: ${view.plateLabel}, distances`,
      pages: numbered(
        settings,
        tablePages(
          placed,
          settings,
          { kind: 'Distances', subject: view.plateLabel },
          distanceTables(placed, holes),
          true,
        ),
      ),
    },
  ];
  return sheets.filter(({ pages }) => pages.length > 0);
}
