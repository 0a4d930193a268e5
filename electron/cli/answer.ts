/** What a command gives back, and how it reaches the terminal. */
import { shownLines } from '../../solver/movement/index.ts';

/** 0 fine, 1 findings or not settled, 2 bad input or usage. */
export type ExitCode = 0 | 1 | 2;

/** What a command gives back: its words, the same as data, and how the program ends. */
export interface Answer {
  /** For a reader: plain text that ends with a line break. */
  readonly text: string;
  /** The same for a program. */
  readonly json: unknown;
  readonly code: ExitCode;
  /** Words for the error stream beside an answer. */
  readonly warning?: string;
}

/** Bad input or usage: sentences for the error stream. Thrown by the commands and caught at the entry. */
export class CommandRefusal extends Error {
  override readonly name = 'Refusal';
}

/** Prints an answer and sets the exit code. */
export function give(answer: Answer, asJson: boolean): void {
  process.stdout.write(asJson ? `${jsonLines(answer.json)}\n` : shownLines(answer.text));
  if (answer.warning !== undefined) complain(answer.warning);
  process.exitCode = answer.code;
}

/** Words for the error stream. Names of a file reach a terminal only without what acts on it. */
export function complain(says: string): void {
  process.stderr.write(shownLines(`depthwright: ${says}\n`));
}

/** JSON in which everything that a terminal could act on is written as its code; a program reads the same text. */
function jsonLines(value: unknown): string {
  const escaped = (character: string): string =>
    [...Array(character.length).keys()]
      .map((i) => `\\u${character.charCodeAt(i).toString(16).padStart(4, '0')}`)
      .join('');
  return JSON.stringify(value, null, 2)
    .split('\n')
    .map((line) => line.replace(/[\p{Cc}\p{Cf}\u2028\u2029]/gu, escaped))
    .join('\n');
}

/** A reader that stops early (`| head`) is no error: the program ends quietly. */
export function endQuietlyWithReader(): void {
  for (const stream of [process.stdout, process.stderr]) {
    stream.on('error', (error: NodeJS.ErrnoException) => {
      if (error.code === 'EPIPE') process.exit();
      throw error;
    });
  }
}
