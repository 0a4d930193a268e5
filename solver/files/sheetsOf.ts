/** Every text file for the workshop: own files for each plate and face, and a pre-flight report of them all. */

import type { Face, Hole } from '../marking/index.ts';
import { drillZero, holesOf, type PlateView, platesOf, plateViewOf } from '../marking/index.ts';
import type { PlacedMovement } from '../planting/placed.ts';
import { extentsOf } from './draw/extents.ts';
import { plateDrawing, seenHoles } from './draw/plateDrawing.ts';
import type { Drawing } from './drawing.ts';
import type { FileFormat, FormatName } from './formats/format.ts';
import { FORMATS } from './formats/formats.ts';
import { type ExpectedSheet, preflight } from './preflight/preflight.ts';
import type { SheetKind } from './sheetKinds.ts';
import { faceStem, fileStemsOf } from './sheetNames.ts';
import type { SheetWords } from './sheetWords.ts';
import { writeDrill } from './write/drill.ts';
import type { DrillOptions } from './write/drillWords.ts';
import { writeDxf } from './write/dxf.ts';
import { writeHoleTable } from './write/holeTable.ts';
import { writeSvg } from './write/svg.ts';

/** A text file by its name. */
export interface Sheet {
  /** Plain ASCII, safe on every file system. */
  readonly name: string;
  readonly text: string;
  readonly format: FormatName;
  /** What it is for. */
  readonly kind: SheetKind;
  /** What it shows, in words: a plate and its face; absent for a file of the whole job. */
  readonly of?: string;
}

/** A file with what its pre-flight should find. */
interface CheckedSheet extends Sheet {
  readonly expected?: ExpectedSheet;
}

/** All sheets in a fixed order: the same placed movement gives the same names and bytes. */
export function sheetsOf(placed: PlacedMovement, words: SheetWords): readonly Sheet[] {
  const stems = fileStemsOf(placed.movement);
  // Found once for all plates: it asks every depth.
  const buildable = words.buildable(placed);
  const told: SheetWords = { ...words, buildable: () => buildable };
  const sheets = platesOf(placed.movement).flatMap((plate, index) =>
    plateSheets(placed, plate, stems[index] ?? 'plate', told),
  );
  const reports = sheets.map(({ expected, ...sheet }) => preflight(sheet, expected).says);
  const files = sheets.map(({ expected: _, ...sheet }): Sheet => sheet);
  return [
    ...files,
    sheetOf('preflight', FORMATS.text, 'preflight', `${[buildable.join('\n'), ...reports].join('\n\n')}\n`),
  ];
}

function plateSheets(
  placed: PlacedMovement,
  plate: string | undefined,
  stem: string,
  words: SheetWords,
): readonly CheckedSheet[] {
  const view = plateViewOf(placed.movement, plate);
  const other: Face = view.face === 'up' ? 'down' : 'up';
  return [...faceSheets(placed, view, `${stem}-${faceStem(view)}`, words), ...otherFace(placed, plate, other, stem)];
}

function faceSheets(placed: PlacedMovement, view: PlateView, stem: string, words: SheetWords): readonly CheckedSheet[] {
  const options = { plate: view.plate?.id, face: view.face };
  const cut = plateDrawing(placed, { ...options, density: 'cut' });
  const numbers = plateDrawing(placed, { ...options, density: 'numbers' });
  const context = plateDrawing(placed, { ...options, density: 'context' });
  const holes = seenHoles(view, holesOf(placed, view.plate?.id));
  const drill = { ...drillOptionsOf(placed, view), buildable: words.buildable(placed) };
  const zero = drill.zero ?? [0, 0];
  const todo = holes.filter((hole) => hole.state !== 'drilled');
  const drilled = todo.map(({ x, y }) => ({ x: x - zero[0], y: y - zero[1] }));
  const { faceLabel } = view;
  const sheet = (kind: SheetKind, format: FileFormat, text: string, expected?: ExpectedSheet): CheckedSheet => ({
    ...sheetOf(`${stem}-${kind}`, format, kind, text, faceLabel),
    ...(expected ? { expected } : {}),
  });
  return [
    sheet('cut', FORMATS.dxf, writeDxf(cut), expectedOf(cut, holes, false)),
    sheet('cut', FORMATS.svg, writeSvg(cut), expectedOf(cut, holes, true)),
    sheet('numbers', FORMATS.dxf, writeDxf(numbers), expectedOf(numbers, holes, false)),
    sheet('numbers', FORMATS.svg, writeSvg(numbers), expectedOf(numbers, holes, true)),
    sheet('context', FORMATS.svg, writeSvg(context), expectedOf(context, holes, true)),
    sheet('drill', FORMATS.drill, writeDrill(holes, drill), { holes: drilled }),
    sheet('holes', FORMATS.table, writeHoleTable(holes), { holes }),
    sheet('steps', FORMATS.text, words.steps(placed, options)),
  ];
}

/** A file whose name ends as its format asks. */
export function sheetOf(stem: string, format: FileFormat, kind: SheetKind, text: string, of?: string): Sheet {
  const whole = { name: `${stem}${format.ending}`, text: format.clean?.(text) ?? text, format: format.name, kind };
  return of === undefined ? whole : { ...whole, of };
}

function otherFace(
  placed: PlacedMovement,
  plate: string | undefined,
  face: Face,
  stem: string,
): readonly CheckedSheet[] {
  const view = plateViewOf(placed.movement, plate, face);
  const holes = seenHoles(view, holesOf(placed, plate));
  const numbers = plateDrawing(placed, { plate, face, density: 'numbers' });
  const sheet = (format: FileFormat, text: string, fromCorner: boolean): CheckedSheet => ({
    ...sheetOf(`${stem}-${faceStem(view)}-numbers`, format, 'numbers', text, view.faceLabel),
    expected: expectedOf(numbers, holes, fromCorner),
  });
  return [sheet(FORMATS.dxf, writeDxf(numbers), false), sheet(FORMATS.svg, writeSvg(numbers), true)];
}

/** What a drawing's file must read back as. SVG readers count from the lower left corner of the sheet. */
export function expectedOf(drawing: Drawing, holes: readonly Hole[], fromCorner: boolean): ExpectedSheet {
  const cut = drawing.layers.filter(({ name }) => name === 'OUTLINE' || name === 'HOLES' || name === 'OPENINGS');
  const [minX, minY, maxX, maxY] = extentsOf(cut);
  const shift = fromCorner ? drawing.extents : [0, 0];
  return {
    size: [maxX - minX, maxY - minY],
    holes: holes.map(({ x, y }) => ({ x: x - (shift[0] ?? 0), y: y - (shift[1] ?? 0) })),
  };
}

/** Settings of a plate's drill program: the maker's choices, the plate's thickness, and the work zero as seen. */
export function drillOptionsOf(placed: PlacedMovement, view: PlateView): DrillOptions {
  const { movement } = placed;
  const zero = drillZero(placed, view);
  return {
    ...movement.drilling,
    title: `${movement.title}, revision ${movement.revision}`,
    face: view.faceLabel,
    thickness: view.plate && Math.abs(view.plate.levels.to - view.plate.levels.from),
    zero: zero?.at,
    zeroSays: zero?.says,
  };
}
