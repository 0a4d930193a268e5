/**
 * `npm run fuzz -- SECONDS [SEED]`: spoiled movement files through the whole program for so long, and a table of what
 * came of them. Faults are printed with their number: `npm run fuzz -- --file NUMBER` writes that text to the output.
 */

import { fork } from 'node:child_process';
import { fileURLToPath } from 'node:url';
import { mutated } from './mutate.ts';
import { sourceTexts } from './sourceTexts.ts';

/** A text may take so long, ms (the law for any file up to 20 MB), and the process so much memory, MB. */
const MOST_MS = 2000;
const MOST_MB = 600;
/** A process that is silent so long hangs, ms. */
const PATIENCE_MS = 20_000;

/** What the process that tries tells of one text. */
export interface Told {
  readonly number: number;
  readonly kind: 'refused' | 'read';
  readonly fault?: string;
  readonly stage: string;
  readonly ms: number;
  readonly megabytes: number;
}

const [first, second = '1'] = process.argv.slice(2);
if (first === '--file') {
  const texts = sourceTexts();
  const number = Number(second);
  process.stdout.write(mutated(texts[number % texts.length] ?? '', number));
  process.exit(0);
}
const seconds = Number(first ?? 60);
if (!(seconds > 0) || !Number.isInteger(Number(second))) {
  console.error('Usage: npm run fuzz -- SECONDS [SEED], both numbers.');
  process.exit(2);
}

let number = Number(second) * 1_000_000;
const start = performance.now();
const counts = { refused: 0, read: 0, wrong: 0, slow: 0, large: 0 };
let longest = { ms: 0, stage: '', number: 0 };
let largest = 0;
const faults = new Map<string, { count: number; number: number }>();

function noted(kind: string, at: number): void {
  const known = faults.get(kind);
  faults.set(kind, { count: (known?.count ?? 0) + 1, number: known?.number ?? at });
}

function take(told: Told): void {
  counts[told.kind]++;
  if (told.fault !== undefined) {
    counts.wrong++;
    noted(told.fault, told.number);
  }
  if (told.ms > MOST_MS) {
    counts.slow++;
    noted(`${told.stage}: over ${MOST_MS} ms`, told.number);
  }
  if (told.megabytes > MOST_MB && largest <= MOST_MB) {
    counts.large++;
    noted(`over ${MOST_MB} MB`, told.number);
  }
  if (told.ms > longest.ms) longest = { ms: told.ms, stage: told.stage, number: told.number };
  largest = Math.max(largest, told.megabytes);
}

/** One process tries texts until it ends or hangs; the next begins after the text that it hung on. */
function trying(): Promise<void> {
  return new Promise((done) => {
    const path = fileURLToPath(new URL('child.ts', import.meta.url));
    const left = seconds - (performance.now() - start) / 1000;
    const child = fork(path, [`${number}`, `${left}`], {
      execArgv: ['--import', 'tsx', `--max-old-space-size=${MOST_MB}`],
    });
    const hang = (): void => {
      counts.wrong++;
      noted(`hung for ${PATIENCE_MS} ms`, number);
      child.kill('SIGKILL');
    };
    let timer = setTimeout(hang, PATIENCE_MS);
    child.on('message', (told: Told) => {
      clearTimeout(timer);
      timer = setTimeout(hang, PATIENCE_MS);
      take(told);
      number = told.number + 1;
    });
    child.on('exit', (code) => {
      clearTimeout(timer);
      if (code !== 0) {
        if (code !== null) {
          counts.wrong++;
          noted(`the process ended with ${code}`, number);
        }
        number++;
      }
      done();
    });
  });
}

while ((performance.now() - start) / 1000 < seconds) await trying();
console.log(
  `Spoiled files, seed ${second}, ${((performance.now() - start) / 1000).toFixed(0)} s, Node ${process.version}`,
);
console.log(`  tried                 ${counts.refused + counts.read}`);
console.log(`  refused with words    ${counts.refused}`);
console.log(`  read and taken through ${counts.read}`);
console.log(`  wrong                 ${counts.wrong}`);
console.log(
  `  over ${MOST_MS} ms          ${counts.slow}; longest ${longest.ms.toFixed(0)} ms, ${longest.stage}, number ${longest.number}`,
);
console.log(`  most memory           ${largest.toFixed(0)} MB`);
for (const [says, { count, number: at }] of faults) console.log(`  ${count} x ${says} (first: ${at})`);
process.exit(counts.wrong + counts.slow + counts.large === 0 ? 0 : 1);
