/** A screen for windows: the one that is there, or one in memory. */
import { spawn } from 'node:child_process';
import { whereIs } from './run.mjs';

/** Size of the screen in memory: larger than the window at its first start. */
const SIZE = '1600x1200x24';

/**
 * Makes sure that there is a screen.
 *
 * @returns `display`: value for the variable DISPLAY (undefined where none is needed), and how to take it away
 */
export function ensureScreen() {
  const nothing = { display: process.env.DISPLAY, stop: () => {} };
  if (process.platform !== 'linux' || !whereIs('Xvfb')) return Promise.resolve(nothing);
  return new Promise((done, fail) => {
    // Xvfb finds a free number by itself and writes it to the third stream.
    const args = ['-displayfd', '3', '-screen', '0', SIZE, '-nolisten', 'tcp'];
    const screen = spawn('Xvfb', args, { stdio: ['ignore', 'ignore', 'ignore', 'pipe'] });
    screen.once('error', fail);
    screen.once('exit', (code) => fail(new Error(`Xvfb ended with code ${code}.`)));
    screen.stdio[3].once('data', (number) => {
      done({ display: `:${String(number).trim()}`, stop: () => screen.kill() });
    });
  });
}
