/** The lengths that decide what is the same are written once. */
import { readdirSync, readFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { expect, test } from 'vitest';
import { CURE_STEP, GAUGE, HOLDS, ONE_PLACE, TOUCH, TOUCHING } from '../../solver/tolerances.ts';

const TOP = resolve(import.meta.dirname, '../..');

/** Constants of 1e-9, 1e-6 or 1e-3 whose comment calls them millimetres, with their file. */
function lengthsIn(text: string): string[] {
  const stated = /\/\*\*((?:(?!\*\/)[\s\S])*)\*\/\n(?:export )?const (\w+) = 1e-[369];/g;
  return [...text.matchAll(stated)].filter(([, says]) => /\bmm\b/.test(says ?? '')).map(([, , name]) => name ?? '');
}

test('a length tolerance stands in tolerances.ts and nowhere else', () => {
  const found = ['solver', 'renderer', 'electron'].flatMap((place) =>
    readdirSync(join(TOP, place), { recursive: true, encoding: 'utf8' })
      .filter((name) => /\.(ts|svelte)$/.test(name))
      .flatMap((name) =>
        lengthsIn(readFileSync(join(TOP, place, name), 'utf8')).map((each) => `${place}/${name} ${each}`),
      ),
  );
  expect(found.sort()).toEqual([
    'solver/tolerances.ts GAUGE',
    'solver/tolerances.ts HOLDS',
    'solver/tolerances.ts ONE_PLACE',
    'solver/tolerances.ts TOUCHING',
  ]);
});

test('a second name for one of them would be seen', () => {
  expect(lengthsIn('/** A rule is kept to this, mm. */\nconst KEPT = 1e-9;\n')).toEqual(['KEPT']);
});

test('what holds is far below what is one place, and that far below what a workshop can tell', () => {
  expect(HOLDS * 100).toBeLessThan(ONE_PLACE);
  expect(ONE_PLACE * 100).toBeLessThan(GAUGE);
  expect(GAUGE).toBeLessThan(CURE_STEP);
  expect(TOUCH).toBe(ONE_PLACE);
  expect(TOUCHING).toBeLessThanOrEqual(GAUGE);
});
