/** From a file name (or `-` for standard input) to a movement, or a refusal that tells all its problems. */
import { basename } from 'node:path';
import { text } from 'node:stream/consumers';
import { readMovement } from '../../solver/movement/index.ts';
import type { Movement } from '../../solver/movement/schema.ts';
import { readDocumentFile } from '../files/documentFile.ts';
import { CommandRefusal, complain } from './answer.ts';

/** Most problems printed; the rest are counted. */
const MOST = 50;

async function textOf(file: string): Promise<string> {
  if (file === '-') return text(process.stdin);
  const read = await readDocumentFile(file);
  if (read.kind !== 'read') throw new CommandRefusal(read.says);
  return read.text;
}

/** Reads the movement that a command names. */
export async function readInput(file: string): Promise<Movement> {
  const reading = readMovement(await textOf(file));
  if (reading.kind === 'movement') {
    for (const { says } of reading.doubts?.slice(0, MOST) ?? []) complain(says);
    return reading.movement;
  }
  const { problems } = reading;
  const count = problems.length === 1 ? '1 problem' : `${problems.length} problems`;
  const lines = problems.slice(0, MOST).map((problem) => `  ${problem.says}`);
  if (problems.length > MOST) lines.push(`  … and ${problems.length - MOST} more.`);
  const name = file === '-' ? 'standard input' : basename(file);
  throw new CommandRefusal(`${name} was not read (${count}); nothing was written.\n${lines.join('\n')}`);
}
