/** Everything for one job in one folder or one zip file: sheets, drawings, drill programs, tables, the movement, a contents page. */
import { strToU8, zipSync } from 'fflate';
import { holesOf, platesOf, plateViewOf } from '../../marking/index.ts';
import { positiveZero, readoutList } from '../../marking/ways/index.ts';
import { writeMovement } from '../../movement/index.ts';
import type { PlacedMovement } from '../../planting/placed.ts';
import { seenHoles } from '../draw/plateDrawing.ts';
import type { FormatName } from '../formats/format.ts';
import { FORMATS, formatOf } from '../formats/formats.ts';
import type { SheetSettings } from '../pages/paper.ts';
import { printedFilesOf } from '../pages/printedFiles.ts';
import { SHEET_KINDS, type SheetKind } from '../sheetKinds.ts';
import { fileStemsOf, plainName } from '../sheetNames.ts';
import { type Sheet, sheetOf, sheetsOf } from '../sheetsOf.ts';
import type { SheetWords } from '../sheetWords.ts';

/** A file of the job, ready to be written. */
export interface HandoverFile {
  /** Path within the folder, with forward slashes. */
  readonly name: string;
  readonly bytes: Uint8Array;
  readonly format: FormatName;
  /** What it is for; the contents page itself says nothing of itself. */
  readonly kind: SheetKind;
}

/** How a job is handed over. */
export interface HandoverOptions {
  readonly settings: SheetSettings;
  /** An earlier revision: the list of changes against it goes in. */
  readonly earlier?: PlacedMovement['movement'] | undefined;
}

/** All files of the handover, in a fixed order; the same movement gives the same bytes. */
export function handoverOf(placed: PlacedMovement, options: HandoverOptions): readonly HandoverFile[] {
  const { movement } = placed;
  const words = options.settings.words(movement);
  const ofSheet = ({ name, text, format, kind }: Sheet): HandoverFile => ({ name, bytes: strToU8(text), format, kind });
  const files: HandoverFile[] = [
    ofSheet(sheetOf(plainName(movement.title) || 'movement', FORMATS.movement, 'movement', writeMovement(movement))),
    ...sheetsOf(placed, words).map(ofSheet),
    ...readouts(placed).map(ofSheet),
    ...printedFilesOf(placed, options.settings),
  ];
  if (options.earlier) {
    const changes = changesText(options.earlier, movement, words);
    files.push(ofSheet(sheetOf('changes', FORMATS.text, 'changes', changes)));
  }
  const contents = contentsText(placed, files, words);
  return [ofSheet(sheetOf('contents', FORMATS.text, 'contents', contents)), ...files];
}

/** The files as one zip archive. Its times are fixed, since the movement's date has no hour and the clock is not asked. */
export function zipOf(files: readonly HandoverFile[]): Uint8Array {
  // The first moment that a zip archive can state; without a zone, so that every machine writes the same local time.
  const mtime = '1980-01-01T00:00:00';
  return zipSync(Object.fromEntries(files.map(({ name, bytes }) => [name, bytes])), { level: 9, mtime });
}

function readouts(placed: PlacedMovement): readonly Sheet[] {
  const stems = fileStemsOf(placed.movement);
  return platesOf(placed.movement).map((plate, index) => {
    const view = plateViewOf(placed.movement, plate);
    const holes = seenHoles(view, holesOf(placed, plate));
    const zero = positiveZero(holes);
    const zeroSays = 'the lowest X and the lowest Y of all holes, so that every reading is positive';
    const { text } = readoutList(holes, { display: placed.movement.display, zero, zeroSays });
    const stem = `${stems[index] ?? 'plate'}-readout`;
    return sheetOf(stem, FORMATS.text, 'readout', `${view.faceLabel}\n${text}`, view.faceLabel);
  });
}

/** What changed since an earlier revision, a sentence a line. */
export function changesText(
  earlier: PlacedMovement['movement'],
  now: PlacedMovement['movement'],
  words: SheetWords,
): string {
  const changes = words.changes(earlier);
  const head = `Changes from revision ${earlier.revision} to revision ${now.revision} of ${now.title}`;
  return `${[head, '', ...(changes.length === 0 ? ['Nothing changed.'] : changes)].join('\n')}\n`;
}

function contentsText(placed: PlacedMovement, files: readonly HandoverFile[], words: SheetWords): string {
  const { movement } = placed;
  const width = files.reduce((most, file) => Math.max(most, file.name.length), 0);
  const lines = files.map(({ name, bytes, format, kind }) => {
    const holds = SHEET_KINDS[kind].holds(formatOf(format));
    return `${name.padEnd(width)}  ${String(bytes.length).padStart(9)} bytes  ${holds}`;
  });
  return `${[
    `${movement.title}, revision ${movement.revision}${movement.date === undefined ? '' : `, ${movement.date}`}`,
    words.planting(placed),
    '',
    ...lines,
    '',
    ...CAUTIONS,
  ].join('\n')}\n`;
}

const CAUTIONS: readonly string[] = [
  'Cautions',
  'Print the sheets at actual size and measure both bars before you trust a paper pattern.',
  'Every sheet says which face it shows. A plate marked from the wrong face is scrap.',
  'Read every drill program and run it above the work before cutting. Clamp the plate; guard the machine; protect your eyes.',
  'Springs, weights, hot metal, solder and chemicals can hurt: follow the makers of your tools and materials.',
  'Local codes and rules, and licensed or trained practice, come before anything written here.',
];
