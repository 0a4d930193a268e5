/**
 * `npm run mutants -- solver/teeth`: breaks the code of a folder in small ways and counts how often a test notices.
 *
 * `--sample 150` how many mutants (default 150), `--seed 1` which ones, `--tests tests/teeth,tests/published` which tests
 * (default: those of the room and the published checks). Prints the survivors and a table. Not part of `npm test`: a room
 * takes minutes.
 */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { parseArgs } from 'node:util';
import type { MutantResult } from '@stryker-mutator/api/core';
import { Stryker } from '@stryker-mutator/core';
import { CHANGES_NOTHING } from './changesNothing.ts';
import { trySampleOnly } from './sampling.ts';

const TOP = fileURLToPath(new URL('../..', import.meta.url));

/** Folders of tests for a folder of code: those of its room, the published checks, and the sentences of outcomes. */
function testsFor(folder: string): string {
  const room = folder.split('/')[1] ?? '';
  return `tests/${room},tests/published`;
}

async function results(folder: string): Promise<readonly MutantResult[]> {
  const stryker = new Stryker({
    mutate: [`${folder}/**/*.ts`],
    testRunner: 'vitest',
    plugins: ['@stryker-mutator/vitest-runner'],
    vitest: { configFile: 'build/mutants/vitest.config.mts', related: true },
    coverageAnalysis: 'perTest',
    concurrency: 1,
    reporters: ['progress-append-only'],
    tempDirName: 'test-results/mutants',
    ignorePatterns: ['build/out', 'build/runtime', 'build/release', 'demo-data/pictures', 'test-results', 'out'],
    allowEmpty: true,
    dryRunTimeoutMinutes: 15,
    timeoutMS: 20_000,
    timeoutFactor: 2,
    logLevel: 'warn',
  } as ConstructorParameters<typeof Stryker>[0]);
  return stryker.runMutationTest();
}

function lineOf({ fileName, location }: MutantResult): { file: string; number: number; line: string } {
  const file = fileName.replace(TOP, '');
  const number = location.start.line;
  return { file, number, line: readFileSync(join(TOP, file), 'utf8').split('\n')[number - 1]?.trim() ?? '' };
}

function isHarmless(result: MutantResult): boolean {
  const { file, line } = lineOf(result);
  return CHANGES_NOTHING.some(
    (one) => one.file === file && one.line === line && one.replacement === result.replacement,
  );
}

function report(folder: string, all: readonly MutantResult[]): void {
  const count = (...states: readonly string[]): number => all.filter(({ status }) => states.includes(status)).length;
  const alive = all.filter(({ status }) => status === 'Survived' || status === 'NoCoverage');
  const harmless = alive.filter(isHarmless);
  for (const result of alive.filter((one) => !harmless.includes(one))) {
    const { file, number, line } = lineOf(result);
    const change = (result.replacement ?? '').replace(/\s+/g, ' ').slice(0, 80);
    console.log(
      `${result.status === 'NoCoverage' ? 'no test ' : 'survived'} ${file}:${number}:${result.location.start.column} ${result.mutatorName}\n    ${line}\n    -> ${change}`,
    );
  }
  const noticed = count('Killed', 'Timeout', 'RuntimeError') + harmless.length;
  const share = all.length === 0 ? 0 : (100 * noticed) / all.length;
  console.log('\nfolder            mutants  killed  endless  change nothing  survived  no test  noticed');
  const cells = [
    folder.padEnd(16),
    `${all.length}`.padStart(8),
    `${count('Killed', 'RuntimeError')}`.padStart(7),
    `${count('Timeout')}`.padStart(8),
    `${harmless.length}`.padStart(15),
    `${count('Survived') - harmless.filter(({ status }) => status === 'Survived').length}`.padStart(9),
    `${count('NoCoverage')}`.padStart(8),
    `${share.toFixed(1)} %`.padStart(8),
  ];
  console.log(cells.join(' '));
}

async function main(): Promise<void> {
  const { values, positionals } = parseArgs({
    allowPositionals: true,
    options: { sample: { type: 'string' }, seed: { type: 'string' }, tests: { type: 'string' } },
  });
  const [folder] = positionals;
  if (!folder?.startsWith('solver/')) throw new Error('Name one folder, such as solver/teeth.');
  const sample = Number(values.sample ?? 150);
  const seed = Number(values.seed ?? 1);
  if (!(sample > 0) || !Number.isInteger(seed)) throw new Error('--sample: a number above 0; --seed: a whole number.');
  process.env['MUTANTS_TESTS'] = values.tests ?? testsFor(folder);
  trySampleOnly(sample, seed);
  report(folder.replace(/\/$/, ''), await results(folder.replace(/\/$/, '')));
}

await main();
