/** Runs the command line as a maker does: the built program, in a process of its own. */
import { spawn } from 'node:child_process';
import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { build } from 'vite';
import { afterAll, beforeAll } from 'vitest';

const TOP = fileURLToPath(new URL('../..', import.meta.url));

/** Folder of the program built for this test file, and of what its tests write. */
let folder: string;
beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), 'depthwright-cli-'));
  const configFile = join(TOP, 'build/vite.shell.config.mts');
  await build({ configFile, mode: 'cli', logLevel: 'error', build: { outDir: join(folder, 'program') } });
});
afterAll(() => rm(folder, { recursive: true, force: true }));

/** Path of the program that is tested. */
export const program = (): string => join(folder, 'program', 'depthwright.cjs');
/** A place for the files of this test file's tests. */
export const scratch = (...names: string[]): string => join(folder, ...names);

export interface Outcome {
  readonly code: number | null;
  readonly out: string;
  readonly err: string;
}

/** Runs `depthwright ARGS`, with `input` on standard input. */
export function depthwright(args: readonly string[], input = ''): Promise<Outcome> {
  return new Promise((done, fail) => {
    const child = spawn(process.execPath, [program(), ...args], { cwd: TOP });
    let out = '';
    let err = '';
    child.stdout.on('data', (part) => {
      out += part;
    });
    child.stderr.on('data', (part) => {
      err += part;
    });
    child.on('error', fail);
    child.on('close', (code) => done({ code, out, err }));
    child.stdin.on('error', () => undefined); // a command that refuses its arguments does not read its input
    child.stdin.end(input);
  });
}
