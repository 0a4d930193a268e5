/**
 * `npm run -s depthwright -- plant FILE`: the command line as it ships, from its bundle, which is made again when a
 * source is newer.
 */
import { existsSync, readdirSync, statSync } from 'node:fs';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { runPackage, TOP } from './setup/run.mjs';

const BUNDLE = join(TOP, 'build', 'out', 'depthwright.cjs');
const CONFIG = join('build', 'vite.shell.config.mts');

/** When anything below a folder was last changed, ms; a folder's own time tells what was taken out of it. */
function changedMs(path) {
  const { mtimeMs } = statSync(path);
  if (!statSync(path).isDirectory()) return mtimeMs;
  return Math.max(mtimeMs, ...readdirSync(path).map((name) => changedMs(join(path, name))));
}

function isStale() {
  if (!existsSync(BUNDLE)) return true;
  const made = statSync(BUNDLE).mtimeMs;
  return ['solver', 'electron', 'package.json', CONFIG].some((path) => changedMs(join(TOP, path)) > made);
}

if (isStale()) {
  const args = ['build', '--config', CONFIG, '--mode', 'cli', '--logLevel', 'warn'];
  const { code, words } = await runPackage('vite/bin/vite.js', args);
  if (code !== 0) {
    console.error(`The command line could not be built:\n${words}`);
    process.exit(1);
  }
}
process.argv[1] = BUNDLE;
await import(pathToFileURL(BUNDLE));
