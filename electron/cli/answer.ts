/** What a command gives back, and how it reaches the terminal. */

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
export class Refusal extends Error {
  override readonly name = 'Refusal';
}

/** Prints an answer and sets the exit code. */
export function give(answer: Answer, asJson: boolean): void {
  process.stdout.write(asJson ? `${JSON.stringify(answer.json, null, 2)}\n` : answer.text);
  if (answer.warning !== undefined) process.stderr.write(`depthwright: ${answer.warning}\n`);
  process.exitCode = answer.code;
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
