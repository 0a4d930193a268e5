/**
 * Runs every benchmark of this folder, or those whose file name contains an argument: `npm run speed -- planting`.
 * A benchmark without a `run` of its own is run as a program.
 */
import { execFileSync } from 'node:child_process';
import { readdirSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { whereAndWhen } from './measure.ts';

const wanted = process.argv.slice(2);
const folder = new URL('.', import.meta.url);
const files = readdirSync(folder)
  .filter((name) => name.endsWith('.bench.ts') && (wanted.length === 0 || wanted.some((part) => name.includes(part))))
  .sort();

console.log(whereAndWhen());
for (const file of files) {
  const module: unknown = await import(new URL(file, folder).href);
  const run = (module as { run?: () => void | Promise<void> }).run;
  console.log(`\n${file}`);
  if (typeof run === 'function') await run();
  else execFileSync(process.execPath, ['--import', 'tsx', fileURLToPath(new URL(file, folder))], { stdio: 'inherit' });
}
