/**
 * Long proofs by command: `npm run proof -- NAME [COUNT] [SEED]` runs one of the modules in this folder and prints its
 * table; the exit code is 1 where anything in it is wrong. Without a count the full one is run; tests run a small sample.
 * A proof is a module that exports `proof: Proof`.
 */
import { readdirSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import type { Proof, Table } from './proof.ts';

const folder = new URL('.', import.meta.url);
const names = readdirSync(fileURLToPath(folder))
  .filter((name) => name.endsWith('.ts') && !['run.ts', 'proof.ts'].includes(name))
  .map((name) => name.slice(0, -3))
  .sort();
const [name, count, seed = '1'] = process.argv.slice(2);

function refuse(says: string): never {
  console.error(`${says}\nUsage: npm run proof -- NAME [COUNT] [SEED], where NAME is one of ${names.join(', ')}.`);
  process.exit(2);
}

if (name === undefined || !names.includes(name)) {
  refuse(name === undefined ? 'Which proof?' : `There is no proof "${name}".`);
}
const { proof } = (await import(new URL(`${name}.ts`, folder).href)) as { proof: Proof<Table | Promise<Table>> };
const cases = count === undefined ? proof.fullCount : Number(count);
if (!(Number.isInteger(cases) && cases > 0)) refuse(`COUNT is ${count}: expected a whole number above 0.`);
if (!Number.isInteger(Number(seed))) refuse(`SEED is ${seed}: expected a whole number.`);
console.log(`${proof.title}: ${cases} cases, seed ${seed}, Node ${process.version}`);
const started = performance.now();
const table = await proof.run(cases, Number(seed));
for (const line of table.lines) console.log(line);
console.log(
  `${table.wrong === 0 ? 'Proved' : `${table.wrong} WRONG`}, in ${((performance.now() - started) / 1000).toFixed(1)} s.`,
);
process.exit(table.wrong === 0 ? 0 : 1);
