/** Takes the text of a file through everything that the program does with one, and says what went wrong. */
import { checkAnswer } from '../../electron/cli/checkAnswer.ts';
import { stepsAnswer } from '../../electron/cli/filesAnswers.ts';
import { madeAnswer } from '../../electron/cli/madeAnswer.ts';
import { plantAnswer } from '../../electron/cli/plantAnswer.ts';
import { turnsAnswer } from '../../electron/cli/turnsAnswer.ts';
import { sheetsOf } from '../../solver/files/index.ts';
import { readMovement, writeMovement } from '../../solver/movement/index.ts';
import { plantMovement } from '../../solver/planting/index.ts';
import { sheetWordsOf } from '../../solver/words/shop/index.ts';

/** What became of one text. */
export interface Tried {
  readonly kind: 'refused' | 'read';
  /** Name of the stage in which something went wrong, and what; absent where nothing did. */
  readonly fault?: string;
  /** Longest stage, ms, with its name. */
  readonly longest: { readonly stage: string; readonly ms: number };
}

/** Figures that no output may hold. A name may hold the words. */
const NO_FIGURE = /(?<![\p{L}\d])(NaN|Infinity|undefined)(?![\p{L}\d])/u;

/** Tries one text. `now` tells the time in ms; the solver itself knows none. */
export function tryFile(text: string, now: () => number): Tried {
  let longest = { stage: 'none', ms: 0 };
  let stage = 'read';
  const timed = <T>(name: string, work: () => T): T => {
    stage = name;
    const start = now();
    const result = work();
    const ms = now() - start;
    if (ms > longest.ms) longest = { stage: name, ms };
    return result;
  };
  const tried = (kind: Tried['kind'], fault?: string): Tried => ({ kind, longest, ...(fault && { fault }) });
  try {
    const reading = timed('read', () => readMovement(text));
    if (reading.kind === 'problems') {
      const mute = reading.problems.find(({ says, remedy }) => says.trim() === '' || remedy.trim() === '');
      return tried('refused', mute && `a problem without words at ${mute.path}`);
    }
    const { movement } = reading;
    const again = timed('write', () => readMovement(writeMovement(movement)));
    if (again.kind === 'problems') return tried('read', `write: not read again: ${again.problems[0]?.says}`);
    const placed = timed('plant', () => plantMovement(movement));
    const answers = [
      timed('plant answer', () => plantAnswer(placed)),
      timed('turns', () => turnsAnswer(placed)),
      timed('check', () => checkAnswer(placed)),
      timed('steps', () => stepsAnswer(placed, {})),
      timed('made', () => madeAnswer(placed, {})),
    ];
    const sheets = timed('sheets', () => sheetsOf(placed, sheetWordsOf(movement)));
    const names = JSON.stringify(movement);
    for (const said of [...answers.map((answer) => answer.text), ...sheets.map((sheet) => sheet.text)]) {
      const word = NO_FIGURE.exec(said)?.[0];
      if (word !== undefined && !names.includes(word)) return tried('read', `${stage}: “${word}” in what is said`);
    }
  } catch (error) {
    const says =
      error instanceof Error ? `${error.message} ${error.stack?.split('\n')[1]?.trim() ?? ''}` : String(error);
    return tried('read', `${stage}: ${says}`);
  }
  if (Reflect.get({}, 'polluted') !== undefined || Object.keys(Object.prototype).length > 0) {
    return tried('read', 'prototype polluted');
  }
  return tried('read');
}
