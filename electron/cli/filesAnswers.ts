/** `depthwright steps`, `sheets` and `handover`: the order of striking, and the files for the workshop. */
import { mkdir } from 'node:fs/promises';
import { dirname, resolve } from 'node:path';
import { FORMATS, handoverOf, type Sheet, sheetsOf, zipOf } from '../../solver/files/index.ts';
import { type PaperName, printedFilesOf } from '../../solver/files/pages/index.ts';
import { type Face, markingPlan, namer, platesOf, plateViewOf } from '../../solver/marking/index.ts';
import type { PlacedMovement } from '../../solver/planting/placed.ts';
import { counted, speakerOf } from '../../solver/words/index.ts';
import { disagreementSays, plantingSays } from '../../solver/words/planting/index.ts';
import { datumSays, sheetWordsOf, stepLines, stepsText } from '../../solver/words/shop/index.ts';
import { atomicWrite } from '../files/atomicWrite.ts';
import { type FileToWrite, writeIntoFolder } from '../files/exportFolder.ts';
import { fileTrouble } from '../files/fileTrouble.ts';
import { sheetFonts } from '../files/sheetFontFiles.ts';
import { type Answer, CommandRefusal } from './answer.ts';
import { inBlocks } from './columns.ts';
import { plainSpeaker } from './plainSpeaker.ts';
import { isSettled, titleLine } from './plantAnswer.ts';

/** Which face of which plate the steps are for. */
export interface StepsChoice {
  readonly plate?: string;
  /** The marked face unless the other one is asked for. */
  readonly face?: 'marked' | 'other';
}

/** Where files go, and how sheets are printed. */
export interface PrintChoice {
  readonly out: string;
  readonly pdf?: boolean;
  readonly pages?: boolean;
  readonly paper: PaperName;
}

/** The plates that were asked for: the named one, or all. */
function platesAsked({ movement }: PlacedMovement, plate: string | undefined): readonly (string | undefined)[] {
  const known = platesOf(movement);
  if (plate === undefined) return known;
  const name = namer(movement);
  const asked = plate.trim().toLowerCase();
  const found =
    known.find((id) => id === plate) ?? known.find((id) => id !== undefined && name(id).toLowerCase() === asked);
  if (found !== undefined) return [found];
  const names = known.flatMap((id) => (id === undefined ? [] : [`"${name(id)}"`])).join(', ');
  throw new CommandRefusal(
    `There is no plate "${plate}". ${names ? `Plates: ${names}.` : 'The movement has no plates.'}`,
  );
}

/** The face of a plate that is asked for, as the plate lies. */
function faceAsked({ movement }: PlacedMovement, plate: string | undefined, face: StepsChoice['face']): Face {
  const marked = plateViewOf(movement, plate).face;
  if (face !== 'other') return marked;
  return marked === 'up' ? 'down' : 'up';
}

/** Marking-out steps of the plates asked for, as text and as data. */
export function stepsAnswer(placed: PlacedMovement, choice: StepsChoice): Answer {
  const speaker = speakerOf(placed.movement);
  const plates = platesAsked(placed, choice.plate);
  const options = plates.map((plate) => ({ plate, face: faceAsked(placed, plate, choice.face) }));
  const json = {
    title: placed.movement.title,
    settled: isSettled(placed),
    plates: options.map((option) => {
      const { steps, faceLabel, datum } = markingPlan(placed, option);
      const told = steps.map((step) => ({ ...step, says: stepLines(step, datum, speaker).join(' ') }));
      return { plate: option.plate ?? null, face: faceLabel, datum: datumSays(datum, speaker), steps: told };
    }),
  };
  const text = options.map((option) => stepsText(placed, option, speaker)).join('\n\n');
  return { text, json, code: isSettled(placed) ? 0 : 1, ...unsettledWarning(placed) };
}

function unsettledWarning(placed: PlacedMovement): { warning?: string } {
  return isSettled(placed)
    ? {}
    : { warning: `not everything is settled: ${plantingSays(placed, plainSpeaker(placed.movement))}` };
}

async function madeFolder(folder: string): Promise<string> {
  const path = resolve(folder);
  try {
    await mkdir(path, { recursive: true });
    return path;
  } catch (error) {
    throw new CommandRefusal(fileTrouble('made', path, error));
  }
}

/** The pre-flight report: the blocks of files that want a look, or one line when all are fine. */
function reportBlocks(sheets: readonly Sheet[]): string[][] {
  const { name, text: report } = sheets.find(({ kind }) => kind === 'preflight') ?? { name: '', text: '' };
  const blocks = report.trimEnd().split('\n\n');
  const odd = blocks.filter((block) => !block.split('\n', 1)[0]?.endsWith(': fine.'));
  if (odd.length === 0) return [[`Each was read back and is fine; ${name} has the numbers.`]];
  return odd.map((block) => block.split('\n'));
}

/**
 * Metal is not to be cut to rules that contradict each other: said with what would settle them, and nothing written.
 * A rule that only drilled places miss stops nothing: those are made.
 */
function refusedAsContested(placed: PlacedMovement): Answer | undefined {
  if (![...placed.places.values()].some(({ state }) => state === 'contested')) return undefined;
  const speaker = plainSpeaker(placed.movement);
  const says = placed.disagreements.map((each) => disagreementSays(each, speaker)).join('\n  ');
  const warning = `nothing was written, as rules disagree. Settle them, or leave one out:\n  ${says}`;
  return { text: '', json: { title: placed.movement.title, settled: false, files: [] }, code: 1, warning };
}

/** Writes all workshop files into a folder and tells their names; with `pdf` the printed sheets, too, with `pages` their pages as SVG. */
export async function sheetsAnswer(placed: PlacedMovement, { out, pdf, pages, paper }: PrintChoice): Promise<Answer> {
  const refused = refusedAsContested(placed);
  if (refused) return refused;
  const sheets = sheetsOf(placed, sheetWordsOf(placed.movement));
  const formats = [...(pdf ? [FORMATS.pdf.name] : []), ...(pages ? [FORMATS.svg.name] : [])];
  const printed =
    formats.length > 0 ? printedFilesOf(placed, { fonts: sheetFonts(), words: sheetWordsOf, paper }, formats) : [];
  const names = await written(out, [
    ...sheets.map(({ name, text }) => ({ name, content: text })),
    ...printed.map(({ name, bytes }) => ({ name, content: bytes })),
  ]);
  const text = inBlocks([
    [titleLine(placed.movement), `${counted(names.length, 'file')} written to ${out}:`],
    names.map((name) => `  ${name}`),
    ...reportBlocks(sheets),
    ...(formats.length > 0 ? [[PRINTING]] : []),
  ]);
  const json = { title: placed.movement.title, settled: isSettled(placed), folder: out, files: names };
  return { text, json, code: isSettled(placed) ? 0 : 1, ...unsettledWarning(placed) };
}

const PRINTING = 'Print the sheets at actual size and measure both bars before a paper pattern is trusted.';

/** Writes the files into a folder, which is made where it is missing; gives their names. */
export async function written(out: string, files: readonly FileToWrite[]): Promise<readonly string[]> {
  const outcome = await writeIntoFolder(await madeFolder(out), files);
  if (outcome.kind === 'failed') throw new CommandRefusal(outcome.says);
  return outcome.names;
}

/** Writes everything for one job into a folder, or into one file when the name ends in .zip. */
export async function handoverAnswer(placed: PlacedMovement, { out, paper }: PrintChoice): Promise<Answer> {
  const refused = refusedAsContested(placed);
  if (refused) return refused;
  const files = handoverOf(placed, { settings: { fonts: sheetFonts(), words: sheetWordsOf, paper } });
  const isZip = /\.zip$/i.test(out);
  if (isZip) {
    const path = resolve(out);
    await madeFolder(dirname(path));
    try {
      await atomicWrite(path, zipOf(files));
    } catch (error) {
      throw new CommandRefusal(fileTrouble('written', path, error));
    }
  } else {
    await written(
      out,
      files.map(({ name, bytes }) => ({ name, content: bytes })),
    );
  }
  const names = files.map(({ name }) => name);
  const text = inBlocks([
    [titleLine(placed.movement), `${counted(names.length, 'file')} written ${isZip ? 'into' : 'to'} ${out}:`],
    names.map((name) => `  ${name}`),
    [`Read contents.txt first: it lists every file, and the cautions. ${PRINTING}`],
  ]);
  const json = { title: placed.movement.title, settled: isSettled(placed), out, files: names };
  return { text, json, code: isSettled(placed) ? 0 : 1, ...unsettledWarning(placed) };
}
