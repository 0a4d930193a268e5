/** Running other programs from the set-up scripts. Only Node's own modules here: nothing is installed yet. */
import { spawn, spawnSync } from 'node:child_process';
import { existsSync } from 'node:fs';
import { delimiter, join } from 'node:path';
import { fileURLToPath } from 'node:url';

/** The top folder of the checkout. */
export const TOP = fileURLToPath(new URL('../..', import.meta.url)).replace(/[\\/]$/, '');

/**
 * Runs a program to its end.
 *
 * @param options.show  `true`: its words go to the screen as they come; otherwise they are collected
 * @returns exit code (-1: it could not be started or ran over `timeoutMs`) and the collected words
 */
export function run(program, args, options = {}) {
  const { show = false, env = {}, timeoutMs, cwd = TOP } = options;
  return new Promise((done) => {
    const child = spawn(program, args, {
      cwd,
      env: { ...process.env, ...env },
      stdio: ['ignore', show ? 'inherit' : 'pipe', show ? 'inherit' : 'pipe'],
      ...(timeoutMs ? { timeout: timeoutMs, killSignal: 'SIGKILL' } : {}),
      shell: process.platform === 'win32' && program === 'npm',
    });
    const parts = [];
    child.stdout?.on('data', (part) => parts.push(part));
    child.stderr?.on('data', (part) => parts.push(part));
    child.on('error', (error) => done({ code: -1, words: error.message }));
    child.on('close', (code) => done({ code: code ?? -1, words: Buffer.concat(parts).toString('utf8') }));
  });
}

/** Where a program is on the search path, or undefined. */
export function whereIs(program) {
  const endings = process.platform === 'win32' ? ['.exe', '.cmd', ''] : [''];
  for (const folder of (process.env.PATH ?? '').split(delimiter)) {
    for (const ending of endings) {
      if (folder && existsSync(join(folder, program + ending))) return join(folder, program + ending);
    }
  }
  return undefined;
}

/** Whether a short command ends well. */
export function succeeds(program, args) {
  return spawnSync(program, args, { stdio: 'ignore' }).status === 0;
}

/** Runs the script of an installed npm package with this Node, by its path inside node_modules. */
export function runPackage(script, args, options = {}) {
  return run(process.execPath, [join(TOP, 'node_modules', script), ...args], options);
}
