/** `depthwright steps` and `depthwright sheets`: the order of striking, and the files for the workshop. */
import { mkdir } from 'node:fs/promises';
import { resolve } from 'node:path';
import type { PlacedMovement } from '../../solver/planting/index.ts';
import { type Face, markingPlan, platesOf, type Sheet, sheetsOf, stepsText } from '../../solver/workshop/index.ts';
import { writeIntoFolder } from '../files/exportFolder.ts';
import { fileTrouble } from '../files/fileTrouble.ts';
import { type Answer, Refusal } from './answer.ts';
import { inBlocks } from './columns.ts';
import { isSettled, titleLine } from './plantAnswer.ts';

/** The file in which the others are read back. */
const REPORT = 'preflight.txt';

export interface StepsChoice {
  readonly plate?: string;
  readonly face?: Face;
}

/** The plates that were asked for: the named one, or all. */
function platesAsked({ movement }: PlacedMovement, plate: string | undefined): readonly (string | undefined)[] {
  const known = platesOf(movement);
  if (plate === undefined) return known;
  if (known.some((id) => id === plate)) return [plate];
  const names = known.filter((id) => id !== undefined).join(', ');
  throw new Refusal(`There is no plate "${plate}". ${names ? `Plates: ${names}.` : 'The movement has no plates.'}`);
}

/** Marking-out steps of the plates asked for, as text and as data. */
export function stepsAnswer(placed: PlacedMovement, choice: StepsChoice): Answer {
  const plates = platesAsked(placed, choice.plate);
  const options = plates.map((plate) => ({ plate, face: choice.face }));
  const json = {
    title: placed.movement.title,
    settled: isSettled(placed),
    plates: options.map((option) => {
      const { steps, faceLabel, datumSays } = markingPlan(placed, option);
      return { plate: option.plate ?? null, face: faceLabel, datum: datumSays, steps };
    }),
  };
  const text = options.map((option) => stepsText(placed, option)).join('\n\n');
  return { text, json, code: isSettled(placed) ? 0 : 1, ...unsettledWarning(placed) };
}

function unsettledWarning(placed: PlacedMovement): { warning?: string } {
  return isSettled(placed) ? {} : { warning: `not everything is settled: ${placed.says}` };
}

async function madeFolder(folder: string): Promise<string> {
  const path = resolve(folder);
  try {
    await mkdir(path, { recursive: true });
    return path;
  } catch (error) {
    throw new Refusal(fileTrouble('made', path, error));
  }
}

/** The pre-flight report: the blocks of files that want a look, or one line when all are fine. */
function reportBlocks(sheets: readonly Sheet[]): string[][] {
  const report = sheets.find(({ name }) => name === REPORT)?.text ?? '';
  const blocks = report.trimEnd().split('\n\n');
  const odd = blocks.filter((block) => !block.split('\n', 1)[0]?.endsWith(': fine.'));
  if (odd.length === 0) return [[`Each was read back and is fine; ${REPORT} has the numbers.`]];
  return odd.map((block) => block.split('\n'));
}

/** Writes all workshop files into a folder and tells their names. */
export async function sheetsAnswer(placed: PlacedMovement, out: string): Promise<Answer> {
  const sheets = sheetsOf(placed);
  const folder = await madeFolder(out);
  const outcome = await writeIntoFolder(
    folder,
    sheets.map(({ name, text }) => ({ name, content: text })),
  );
  if (outcome.kind === 'failed') throw new Refusal(outcome.says);
  const text = inBlocks([
    [titleLine(placed.movement), `${outcome.names.length} files written to ${out}:`],
    outcome.names.map((name) => `  ${name}`),
    ...reportBlocks(sheets),
  ]);
  const json = { title: placed.movement.title, settled: isSettled(placed), folder: out, files: outcome.names };
  return { text, json, code: isSettled(placed) ? 0 : 1, ...unsettledWarning(placed) };
}
