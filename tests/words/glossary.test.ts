/** One thing has one word: no string holds a word that the glossary of DEVELOPERS.md sets aside, nor a field's name. */
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { movementSchema } from '../../solver/movement/schema.ts';
import { HOLE, type ShownString, shownStrings } from './shownStrings.ts';

const page = readFileSync(new URL('../../DEVELOPERS.md', import.meta.url), 'utf8');

/** The last column of the glossary, by its first. */
function setAside(): readonly (readonly [string, string])[] {
  const table = page.slice(page.indexOf('| we say |')).split('\n\n')[0] ?? '';
  return table
    .split('\n')
    .slice(2)
    .flatMap((row) => {
      const cells = row.split('|').map((cell) => cell.trim());
      return (cells[3] ?? '').split(', ').map((phrase) => [phrase, cells[1] ?? ''] as const);
    });
}

const strings = shownStrings();
const at = (found: readonly ShownString[]): readonly string[] => found.map(({ where, text }) => `${where}: ${text}`);

/** Whole words, in any case of letters. */
const asWords = (phrase: string): RegExp =>
  new RegExp(`(?<![\\p{L}-])${phrase.replace(/[.*+?^${}()|[\]\\]/g, '\\$&')}(?![\\p{L}-])`, 'iu');

describe('the glossary', () => {
  it('finds what it looks for', () => {
    expect(strings.length).toBeGreaterThan(3000);
    expect(setAside().length).toBeGreaterThan(20);
    expect(asWords('hangs on it').test('What Hangs on it')).toBe(true);
    expect(strings.some(({ text }) => text === 'The arcs meet at')).toBe(true);
    expect(strings.some(({ text }) => text.startsWith(`A pivot of ${HOLE} is `))).toBe(true);
  });

  it.each(setAside())('“%s” is said “%s”', (phrase) => {
    expect(at(strings.filter(({ text }) => asWords(phrase).test(text)))).toEqual([]);
  });
});

/** Names of fields that are no word of the language: with a capital inside. */
function fieldNames(schema: unknown, found = new Set<string>()): ReadonlySet<string> {
  if (typeof schema !== 'object' || schema === null) return found;
  for (const [key, value] of Object.entries(schema)) {
    if (key === 'properties') for (const name of Object.keys(value as object)) found.add(name);
    fieldNames(value, found);
  }
  return found;
}

describe('fields of the file', () => {
  /** Where a field is named on purpose: what is wrong with a file, and what a maker types into one. */
  const OF_FILES = /^solver\/movement\//;
  const fields = [...fieldNames(movementSchema.toJSONSchema({ io: 'input', unrepresentable: 'any' }))].filter((name) =>
    /[a-z][A-Z]/.test(name),
  );

  it('are many', () => expect(fields.length).toBeGreaterThan(20));

  it('are named in no sentence', () => {
    const named = new RegExp(`\\b(${fields.join('|')})\\b`);
    const sentences = strings.filter(({ where, text }) => !OF_FILES.test(where) && /\S \S/.test(text.trim()));
    expect(at(sentences.filter(({ text }) => named.test(text)))).toEqual([]);
  });
});

/** Things that are counted where files, steps and findings are told. */
const COUNTED =
  'files|findings|steps|sheets|tries|pages|plates|readings|tools|lengths|places|rules|motions|days|disagreements';

it('nothing is counted by hand: “1 files” is never said', () => {
  const spoken = strings.filter(({ where }) => /^(renderer|electron|solver\/words)\//.test(where));
  const byHand = new RegExp(`${HOLE} (more )?(${COUNTED})\\b`);
  expect(at(spoken.filter(({ text }) => byHand.test(text)))).toEqual([]);
});
