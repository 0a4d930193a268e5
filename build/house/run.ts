/**
 * `npm run house`: measures the house and prints a table; ends with 1 where a limit is passed.
 *
 * `npm run house -- words` lists the places behind one line.
 */
import { fileURLToPath } from 'node:url';
import { LIMITS } from './limits.ts';
import { readSources } from './sources.ts';

const TOP = fileURLToPath(new URL('../..', import.meta.url)).replace(/[\\/]$/, '');

function table(rows: readonly (readonly string[])[]): string {
  const widths = (rows[0] ?? []).map((_, i) => Math.max(...rows.map((row) => (row[i] ?? '').length)));
  return rows
    .map((row) =>
      row
        .map((cell, i) => (i < 2 ? cell.padEnd(widths[i] ?? 0) : cell.padStart(widths[i] ?? 0)))
        .join('  ')
        .trimEnd(),
    )
    .join('\n');
}

function verdict(value: number, wanted: number, allowed: number): string {
  if (value > allowed) return 'OVER';
  return value <= wanted ? 'ok' : 'not yet';
}

function main(): void {
  const named = process.argv.slice(2);
  const unknown = named.filter((name) => !(name in LIMITS));
  if (unknown.length > 0) {
    throw new Error(`Unknown line: ${unknown.join(', ')}. Lines: ${Object.keys(LIMITS).join(', ')}.`);
  }
  const sources = readSources(TOP);
  const rows: string[][] = [['line', 'what', 'value', 'allowed', 'wanted', '']];
  for (const [name, { says, measure, wanted, allowed }] of Object.entries(LIMITS)) {
    const { value, places } = measure(sources);
    rows.push([name, says, `${value}`, `${allowed}`, `${wanted}`, verdict(value, wanted, allowed)]);
    if (value > allowed) process.exitCode = 1;
    if (named.includes(name)) console.log(`${places.join('\n')}\n`);
    else if (value > allowed && named.length === 0) console.log(`${name}:\n${places.slice(0, 20).join('\n')}\n`);
  }
  console.log(table(rows));
}

main();
