/** Every room tells its idea, the order to read it in, an example and a picture; the files it names are there. */
import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { describe, expect, test } from 'vitest';

const TOP = resolve(import.meta.dirname, '../..');
const rooms = readdirSync(join(TOP, 'solver'), { withFileTypes: true })
  .filter((entry) => entry.isDirectory())
  .map(({ name }) => `solver/${name}`);

describe.each([...rooms, 'renderer', 'electron'])('%s', (room) => {
  const path = join(TOP, room, 'README.md');

  test('has its README with idea, order, example and picture', () => {
    const text = readFileSync(path, 'utf8');
    expect(text).toMatch(/^# \S/);
    expect(text).toMatch(/^```\n[\s\S]+?^```$/m);
    expect(text).toContain('\n## Read in this order\n');
    expect(text).toContain('\n## One example\n');
  });

  test('names files that are there', () => {
    const named = [...readFileSync(path, 'utf8').matchAll(/`([\w./-]+\.(?:ts|svelte|md))`/g)].map(
      (match) => match[1] ?? '',
    );
    expect(named.length).toBeGreaterThan(2);
    const missing = named.filter((file) => !existsSync(join(TOP, room, file)) && !existsSync(join(TOP, file)));
    expect(missing).toEqual([]);
  });
});
