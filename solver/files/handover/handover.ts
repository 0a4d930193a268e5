/** Everything for one job in one folder or one zip file: sheets, drawings, drill programs, tables, the movement, a contents page. */
import { strToU8, zipSync } from 'fflate';
import { holesOf, platesOf, plateViewOf } from '../../marking/index.ts';
import { positiveZero, readoutList } from '../../marking/ways/index.ts';
import { writeMovement } from '../../movement/index.ts';
import type { PlacedMovement } from '../../planting/placed.ts';
import { seenHoles } from '../draw/plateDrawing.ts';
import type { SheetSettings } from '../pages/paper.ts';
import { printedFilesOf } from '../pages/printedFiles.ts';
import { fileStemsOf, plainName } from '../sheetNames.ts';
import { sheetsOf } from '../sheetsOf.ts';
import type { SheetWords } from '../sheetWords.ts';

/** A file of the job, ready to be written. */
export interface HandoverFile {
  /** Path within the folder, with forward slashes. */
  readonly name: string;
  readonly bytes: Uint8Array;
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
  const text = (name: string, words: string): HandoverFile => ({ name, bytes: strToU8(words) });
  const files: HandoverFile[] = [
    text(`${plainName(movement.title) || 'movement'}.json`, writeMovement(movement)),
    ...sheetsOf(placed, options.settings.words(movement)).map((sheet) => text(sheet.name, sheet.text)),
    ...readouts(placed).map((sheet) => text(sheet.name, sheet.text)),
    ...printedFilesOf(placed, options.settings),
  ];
  if (options.earlier) {
    files.push(text('changes.txt', changesText(options.earlier, movement, options.settings.words(movement))));
  }
  return [text('contents.txt', contentsText(placed, files, options.settings.words(movement))), ...files];
}

/** The files as one zip archive. Its times are fixed, since the movement's date has no hour and the clock is not asked. */
export function zipOf(files: readonly HandoverFile[]): Uint8Array {
  // The first moment that a zip archive can state; without a zone, so that every machine writes the same local time.
  const mtime = '1980-01-01T00:00:00';
  return zipSync(Object.fromEntries(files.map(({ name, bytes }) => [name, bytes])), { level: 9, mtime });
}

function readouts(placed: PlacedMovement): readonly { readonly name: string; readonly text: string }[] {
  const stems = fileStemsOf(placed.movement);
  return platesOf(placed.movement).map((plate, index) => {
    const view = plateViewOf(placed.movement, plate);
    const holes = seenHoles(view, holesOf(placed, plate));
    const zero = positiveZero(holes);
    const zeroSays = 'the lowest X and the lowest Y of all holes, so that every reading is positive';
    const { text } = readoutList(holes, { display: placed.movement.display, zero, zeroSays });
    return { name: `${stems[index] ?? 'plate'}-readout.txt`, text: `${view.faceLabel}\n${text}` };
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

const KINDS: readonly (readonly [RegExp, string])[] = [
  [/-page-\d+\.svg$/, 'one page of the printed sheet, true size'],
  [/-cut\.(dxf|svg)$/, 'what a machine cuts, nothing else'],
  [/-numbers\.dxf$/, 'points, arcs and lettering for marking'],
  [/-numbers\.(svg|pdf)$/, 'numbers sheet, true size'],
  [/-context\.(svg|pdf)$/, 'context sheet, true size'],
  [/-cards\.pdf$/, 'step cards for the bench'],
  [/-distances\.pdf$/, 'all hole-to-hole distances'],
  [/-drill\.ngc$/, 'drill program: read its header first'],
  [/-holes\.csv$/, 'hole table'],
  [/-steps\.txt$/, 'marking-out steps'],
  [/-readout\.txt$/, 'the holes for a digital readout'],
  [/^parts\.pdf$/, 'parts list and arbor strips'],
  [/^readings\.pdf$/, 'record of readings, with blank boxes'],
  [/^preflight\.txt$/, 'every file read back and measured'],
  [/^changes\.txt$/, 'what changed since the earlier revision'],
  [/\.json$/, 'the movement itself'],
];

function contentsText(placed: PlacedMovement, files: readonly HandoverFile[], words: SheetWords): string {
  const { movement } = placed;
  const width = files.reduce((most, file) => Math.max(most, file.name.length), 0);
  const lines = files.map(({ name, bytes }) => {
    const kind = KINDS.find(([pattern]) => pattern.test(name))?.[1] ?? '';
    return `${name.padEnd(width)}  ${String(bytes.length).padStart(9)} bytes  ${kind}`;
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
