/** Every printed sheet of a movement as pages: numbers, context, step cards, distances for each plate; parts and readings. */

import type { Face, PlateView } from '../../marking/index.ts';
import { holesOf, markingPlan, platesOf, plateViewOf } from '../../marking/index.ts';
import type { PlacedMovement } from '../../planting/placed.ts';
import { plateDrawing, seenHoles } from '../draw/plateDrawing.ts';
import { FORMATS } from '../formats/formats.ts';
import type { SheetKind } from '../sheetKinds.ts';
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
  /** File name without its ending, and with that of the printed sheet. */
  readonly stem: string;
  readonly name: string;
  readonly kind: SheetKind;
  readonly title: string;
  readonly pages: readonly Page[];
}

function sheetOfPages(stem: string, kind: SheetKind, title: string, pages: readonly Page[]): PrintedSheet {
  return { stem, name: `${stem}${FORMATS.pdf.ending}`, kind, title, pages };
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
    sheetOfPages('parts', 'parts', `${title}: parts`, parts),
    sheetOfPages('readings', 'readings', `${title}: readings`, readings),
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
  const sheetOn = (seen: PlateView, kind: SheetKind, what: string, pages: readonly Page[]) =>
    sheetOfPages(`${stem}-${faceStem(seen)}-${kind}`, kind, `${title}: ${seen.faceLabel}, ${what}`, pages);
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
    return sheetOn(seen, 'numbers', 'numbers', pages);
  };
  const subject = view.faceLabel;
  const context = plateDrawing(placed, { plate, face: view.face, density: 'context', caption: false, widthOf });
  const sheets: PrintedSheet[] = [
    numbersOf(view.face),
    numbersOf(other),
    sheetOn(
      view,
      'context',
      'context',
      numbered(settings, trueSizePages(placed, context, settings, { kind: 'Context sheet', subject })),
    ),
    sheetOn(
      view,
      'cards',
      'step cards',
      numbered(settings, stepCardPages(placed, { plate, face: view.face }, settings)),
    ),
    sheetOfPages(
      `${stem}-distances`,
      'distances',
      `${title}: ${view.plateLabel}, distances`,
      numbered(
        settings,
        tablePages(
          placed,
          settings,
          { kind: 'Distances', subject: view.plateLabel },
          distanceTables(placed, holes),
          true,
        ),
      ),
    ),
  ];
  return sheets.filter(({ pages }) => pages.length > 0);
}
