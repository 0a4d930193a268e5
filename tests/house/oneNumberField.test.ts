/** Numbers are typed into the one number field: nothing else in the window takes them. */
import { readdirSync, readFileSync } from 'node:fs';
import { join, relative } from 'node:path';
import { fileURLToPath } from 'node:url';
import { expect, test } from 'vitest';

const RENDERER = fileURLToPath(new URL('../../renderer', import.meta.url));
const FIELD = 'fields/NumberField.svelte';

/** Inputs of a component that take numbers, by how they say so. */
function numberInputs(text: string): readonly string[] {
  return [...text.matchAll(/<input\b.*?\/>/gs)]
    .map(([input]) => input)
    .filter((input) => /type="number"|inputmode="(?:decimal|numeric)"/.test(input));
}

test('an input that takes a number is told from one that does not', () => {
  expect(numberInputs('<input type="number" /><input type="checkbox" /><input inputmode="decimal" />')).toHaveLength(2);
});

test('no component but the number field has an input for numbers', () => {
  const components = readdirSync(RENDERER, { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile() && entry.name.endsWith('.svelte'))
    .map((entry) => join(entry.parentPath, entry.name));
  const found = components.filter((path) => numberInputs(readFileSync(path, 'utf8')).length > 0);
  expect(found.map((path) => relative(RENDERER, path))).toEqual([FIELD]);
});
