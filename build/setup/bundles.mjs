/** The built files (page, shell, command line): made again only when something they are made from has changed. */
import { createHash } from 'node:crypto';
import { existsSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { runPackage, TOP } from './run.mjs';

/** What the built files are made from. */
const SOURCES = ['solver', 'renderer', 'electron', 'demo-data', 'package-lock.json', 'package.json'];
const CONFIGS = ['build/vite.renderer.config.mts', 'build/vite.shell.config.mts'];
const STAMP = join(TOP, 'build', 'out', '.made-from');

const BUNDLES = [
  { name: 'page', args: ['--config', 'build/vite.renderer.config.mts'] },
  ...['main', 'preload', 'cli'].map((mode) => ({
    name: mode,
    args: ['--config', 'build/vite.shell.config.mts', '--mode', mode],
  })),
];

function filesUnder(path) {
  if (!existsSync(path)) return [];
  const entries = readdirSync(path, { withFileTypes: true, recursive: true });
  return entries.filter((entry) => entry.isFile()).map((entry) => join(entry.parentPath ?? entry.path, entry.name));
}

function digestOfSources() {
  const hash = createHash('sha256');
  const files = SOURCES.flatMap((source) =>
    source.includes('.') ? [join(TOP, source)] : filesUnder(join(TOP, source)),
  );
  for (const file of [...files, ...CONFIGS.map((config) => join(TOP, config))].sort()) {
    hash.update(file.slice(TOP.length)).update('\0').update(readFileSync(file)).update('\0');
  }
  return hash.digest('hex');
}

/** Makes the built files if needed; gives the words of the builds that failed. */
export async function ensureBundles() {
  const digest = digestOfSources();
  if (existsSync(STAMP) && readFileSync(STAMP, 'utf8') === digest) return [];
  const failures = [];
  for (const { name, args } of BUNDLES) {
    const { code, words } = await runPackage('vite/bin/vite.js', ['build', ...args, '--logLevel', 'warn']);
    if (code !== 0) failures.push(`The build of "${name}" failed:\n${words}`);
  }
  if (failures.length === 0) writeFileSync(STAMP, digest);
  return failures;
}
