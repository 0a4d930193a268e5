/** npm packages: installed when they are missing or differ from the lock file, otherwise left alone. */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { run, TOP } from './run.mjs';

const [MAJOR = 0, MINOR = 0] = process.versions.node.split('.').map(Number);

function packagesIn(file) {
  try {
    return JSON.parse(readFileSync(join(TOP, file), 'utf8')).packages;
  } catch {
    // Not there or half-written: the same as not installed.
    return undefined;
  }
}

/**
 * Whether node_modules holds what the lock file asks for. npm writes its own record at the end of an install; the
 * two are compared entry by entry. Optional packages may be absent: they belong to other systems.
 */
function areCurrent() {
  const wanted = packagesIn('package-lock.json');
  const present = packagesIn('node_modules/.package-lock.json');
  if (!wanted || !present) return false;
  return Object.entries(wanted).every(([place, entry]) => {
    if (place === '') return true;
    const found = present[place];
    return found ? found.version === entry.version && found.integrity === entry.integrity : entry.optional === true;
  });
}

/** Installs the npm packages if needed. Throws with a plain sentence when that fails. */
export async function ensurePackages() {
  if (MAJOR < 20 || (MAJOR === 20 && MINOR < 19)) {
    throw new Error(`Node 20.19 or later is needed; this is ${process.versions.node}.`);
  }
  if (areCurrent()) return;
  console.log('Installing npm packages (once, and again when the lock file changes) ...');
  const install = ['ci', '--ignore-scripts', '--no-audit', '--no-fund', '--loglevel=error'];
  const { code, words } = await run('npm', install);
  if (code !== 0) throw new Error(`npm ci failed:\n${words}`);
}
