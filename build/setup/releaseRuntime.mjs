/** Which Electron the program is packaged around: the official one where it is to be had, else the one of the tests. */
import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { TOP } from './run.mjs';
import { ensureTestRuntime, TEST_RUNTIME } from './testRuntime.mjs';

/** The version that a runtime's own executable tells of itself. */
function versionIn(executable) {
  const found = /Electron\/(\d+\.\d+\.\d+)/.exec(readFileSync(executable).toString('latin1'));
  if (!found) throw new Error(`${executable} tells no version of Electron.`);
  return found[1];
}

/** Folder and version of the runtime, and a sentence on which one it is. Throws with a plain sentence. */
export async function releaseRuntime() {
  const { ELECTRON_DIST: given, ELECTRON_VERSION: version } = process.env;
  if (given) {
    return { dist: given, version: version ?? versionIn(join(given, 'electron')), says: `Electron as given: ${given}` };
  }
  const official = join(TOP, 'node_modules', 'electron', 'dist');
  if (existsSync(join(official, process.platform === 'win32' ? 'electron.exe' : 'electron'))) {
    const pinned = JSON.parse(readFileSync(join(TOP, 'node_modules', 'electron', 'package.json'), 'utf8')).version;
    return { dist: official, version: pinned, says: `Electron ${pinned}, the official one` };
  }
  await ensureTestRuntime();
  const tests = versionIn(join(TEST_RUNTIME, 'electron'));
  const says = `Electron ${tests}, the runtime of the tests: the official one is not on this machine. Not for release.`;
  return { dist: TEST_RUNTIME, version: tests, says };
}
