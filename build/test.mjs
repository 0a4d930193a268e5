/**
 * `npm test`: installs what is missing, then runs every check; the last line is the sum over all of them.
 *
 * Parts can be named to run only those: `node build/test.mjs types unit`. With CI=true nothing may be missing and
 * nothing may be skipped.
 */
import { mkdirSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import { ensureBundles } from './setup/bundles.mjs';
import { countScreens, countUnits } from './setup/counting.mjs';
import { ensurePackages } from './setup/packages.mjs';
import { runPackage, TOP } from './setup/run.mjs';
import { ensureScreen } from './setup/screen.mjs';
import { ensureSystemTools } from './setup/systemTools.mjs';
import { ensureTestRuntime, TEST_RUNTIME } from './setup/testRuntime.mjs';

const isCi = process.env.CI === 'true';
const REPORTS = join(TOP, 'test-results', 'reports');
const sum = { passed: 0, failed: 0, skipped: 0 };

function add({ passed, failed, skipped = 0 }, name, startedMs) {
  sum.passed += passed;
  sum.failed += failed;
  sum.skipped += skipped;
  const seconds = ((Date.now() - startedMs) / 1000).toFixed(1);
  const left = skipped > 0 ? `, ${skipped} skipped` : '';
  console.log(`${failed === 0 ? 'ok  ' : 'FAIL'} ${name}: ${passed} passed, ${failed} failed${left} (${seconds} s)`);
}

/** A check that passes or fails as a whole; its words are shown when it fails. */
async function check(name, script, args) {
  const startedMs = Date.now();
  const { code, words } = await runPackage(script, args, { env: { FORCE_COLOR: '0' } });
  if (code !== 0) console.log(words);
  add(code === 0 ? { passed: 1, failed: 0 } : { passed: 0, failed: 1 }, name, startedMs);
}

/** A runner that counts its tests in a report. Ending badly without a failed test is a failure of its own. */
async function runner(name, script, args, options) {
  const startedMs = Date.now();
  const { code } = await runPackage(script, args, { show: true, env: options.env });
  const counts = options.count();
  if (code !== 0 && counts.failed === 0) counts.failed = 1;
  add(counts, name, startedMs);
}

/** The limits of the house; its table is shown whether it passes or not. */
async function house() {
  const startedMs = Date.now();
  const { code, words } = await runPackage('tsx/dist/cli.mjs', ['build/house/run.ts']);
  console.log(words.trimEnd());
  add(code === 0 ? { passed: 1, failed: 0 } : { passed: 0, failed: 1 }, 'house', startedMs);
}

const CHECKS = {
  lint: () => check('lint and format', '@biomejs/biome/bin/biome', ['check', '--error-on-warnings']),
  types: () => check('types', 'typescript/bin/tsc', ['-p', '.']),
  purity: () => check('types of the solver alone', 'typescript/bin/tsc', ['-p', 'build/tsconfig.solver.json']),
  svelte: () =>
    check('types of components', 'svelte-check/bin/svelte-check', [
      '--tsconfig',
      './tsconfig.json',
      '--fail-on-warnings',
    ]),
  imports: () =>
    check('import rules', 'dependency-cruiser/bin/dependency-cruise.mjs', [
      ...['--config', 'build/importRules.mjs', '--output-type', 'err-long'],
      ...['solver', 'renderer', 'electron'],
    ]),
  house,
};

async function units() {
  const file = join(REPORTS, 'units.json');
  const args = [
    'run',
    '--config',
    'build/vitest.config.mts',
    '--reporter=dot',
    '--reporter=json',
    `--outputFile=${file}`,
  ];
  await runner('unit, property and published checks', 'vitest/vitest.mjs', args, { count: () => countUnits(file) });
}

async function built() {
  const startedMs = Date.now();
  const failures = await ensureBundles();
  for (const failure of failures) console.log(failure);
  add({ passed: failures.length === 0 ? 1 : 0, failed: failures.length }, 'build', startedMs);
  return failures.length === 0;
}

async function screens(project) {
  const file = join(REPORTS, `${project}.json`);
  const screen = await ensureScreen();
  const env = {
    DEPTHWRIGHT_REPORT: file,
    ...(screen.display && { DISPLAY: screen.display }),
    ELECTRON_OVERRIDE_DIST_PATH: process.env.ELECTRON_OVERRIDE_DIST_PATH ?? TEST_RUNTIME,
  };
  const args = ['test', '--config', 'build/playwright.config.mts', '--project', project];
  await runner(project, '@playwright/test/cli.js', args, { env, count: () => countScreens(file) });
  screen.stop();
}

/** What is missing on this machine, as a list to install; under CI that ends the run. */
async function missingTools(wanted) {
  const missing = (await ensureSystemTools()).map((tool) => `${tool.what}: on Debian, ${tool.apt.join(' or ')}`);
  if (wanted.has('shell') && !process.env.ELECTRON_OVERRIDE_DIST_PATH) {
    try {
      await ensureTestRuntime();
    } catch (error) {
      missing.push(`An Electron runtime: ${error.message}`);
    }
  }
  if (missing.length > 0) console.log(`Please install:\n${missing.map((line) => `  ${line}`).join('\n')}`);
  return missing.length;
}

async function main() {
  const all = [...Object.keys(CHECKS), 'unit', 'build', 'bench', 'shell'];
  const named = process.argv.slice(2);
  const unknown = named.filter((name) => !all.includes(name));
  if (unknown.length > 0) throw new Error(`Unknown part: ${unknown.join(', ')}. Parts: ${all.join(', ')}.`);
  const wanted = new Set(named.length > 0 ? named : all);
  await ensurePackages();
  rmSync(REPORTS, { recursive: true, force: true });
  mkdirSync(REPORTS, { recursive: true });
  const needsTools = ['unit', 'bench', 'shell'].some((name) => wanted.has(name));
  const missing = needsTools ? await missingTools(wanted) : 0;
  if (missing > 0) sum.failed += isCi ? missing : 0;
  const checks = Object.entries(CHECKS).filter(([name]) => wanted.has(name));
  for (let i = 0; i < checks.length; i += 2) await Promise.all(checks.slice(i, i + 2).map(([, run]) => run()));
  const needsBuild = ['build', 'unit', 'bench', 'shell'].some((name) => wanted.has(name));
  const isBuilt = needsBuild && (await built());
  if (wanted.has('unit')) await units();
  for (const project of ['bench', 'shell']) if (wanted.has(project) && isBuilt) await screens(project);
}

try {
  await main();
} catch (error) {
  console.log(error instanceof Error ? error.message : error);
  sum.failed++;
}
if (isCi) sum.failed += sum.skipped;
console.log(`${sum.passed} passed, ${sum.failed} failed`);
process.exitCode = sum.failed === 0 && sum.passed > 0 ? 0 : 1;
