/** Every text file for the workshop: own files for each plate and face, and a pre-flight report of them all. */

import type { Face, Hole } from '../marking/index.ts';
import { drillZero, holesOf, type PlateView, platesOf, plateViewOf } from '../marking/index.ts';
import type { PlacedMovement } from '../planting/placed.ts';
import { extentsOf } from './draw/extents.ts';
import { plateDrawing, seenHoles } from './draw/plateDrawing.ts';
import type { Drawing } from './drawing.ts';
import { type Expected, preflight } from './preflight/preflight.ts';
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
}

/** A file with what its pre-flight should find. */
interface CheckedSheet extends Sheet {
  readonly expected?: Expected;
}

/** All sheets in a fixed order: the same placed movement gives the same names and bytes. */
export function sheetsOf(placed: PlacedMovement, words: SheetWords): readonly Sheet[] {
  const stems = fileStemsOf(placed.movement);
  const sheets = platesOf(placed.movement).flatMap((plate, index) =>
    plateSheets(placed, plate, stems[index] ?? 'plate', words),
  );
  const reports = sheets.map(({ name, text, expected }) => preflight(name, text, expected).says);
  const files = sheets.map(({ name, text }): Sheet => ({ name, text }));
  return [...files, { name: 'preflight.txt', text: `${reports.join('\n\n')}\n` }];
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
  const drill = drillOptionsOf(placed, view);
  const zero = drill.zero ?? [0, 0];
  const todo = holes.filter((hole) => hole.state !== 'drilled');
  const drilled = todo.map(({ x, y }) => ({ x: x - zero[0], y: y - zero[1] }));
  return [
    { name: `${stem}-cut.dxf`, text: writeDxf(cut), expected: expectedOf(cut, holes, false) },
    { name: `${stem}-cut.svg`, text: writeSvg(cut), expected: expectedOf(cut, holes, true) },
    { name: `${stem}-numbers.dxf`, text: writeDxf(numbers), expected: expectedOf(numbers, holes, false) },
    { name: `${stem}-numbers.svg`, text: writeSvg(numbers), expected: expectedOf(numbers, holes, true) },
    { name: `${stem}-context.svg`, text: writeSvg(context), expected: expectedOf(context, holes, true) },
    { name: `${stem}-drill.ngc`, text: writeDrill(holes, drill), expected: { holes: drilled } },
    { name: `${stem}-holes.csv`, text: writeHoleTable(holes), expected: { holes } },
    { name: `${stem}-steps.txt`, text: words.steps(placed, options) },
  ];
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
  const name = `${stem}-${faceStem(view)}-numbers`;
  return [
    { name: `${name}.dxf`, text: writeDxf(numbers), expected: expectedOf(numbers, holes, false) },
    { name: `${name}.svg`, text: writeSvg(numbers), expected: expectedOf(numbers, holes, true) },
  ];
}

/** What a drawing's file must read back as. SVG readers count from the lower left corner of the sheet. */
export function expectedOf(drawing: Drawing, holes: readonly Hole[], fromCorner: boolean): Expected {
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
