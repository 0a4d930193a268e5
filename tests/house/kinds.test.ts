/** How many files hold a kind's name as a literal, and that a new kind does not compile until it is whole. */
import { readdirSync, readFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import ts from 'typescript';
import { describe, expect, it } from 'vitest';
import { FORMATS } from '../../solver/files/index.ts';

const TOP = resolve(import.meta.dirname, '../..');

/**
 * Files that may hold each name as a string literal. Wanted is one a room; what stands above that is only ever lowered.
 * Names that are words of other tables too (`depth`, `distance`, `radius`, `held`, `text`) are counted as they stand.
 */
const ALLOWED = {
  opposite: 16,
  samePlace: 15,
  inLine: 14,
  sameRadius: 12,
  evenSpacing: 13,
  clearBy: 16,
  cycloidal: 11,
  triangular: 11,
  lantern: 16,
  worm: 10,
  contrate: 9,
  carrier: 10,
  stepped: 6,
  dxf: 2,
  svg: 2,
  pdf: 2,
} as const;

const files = ['solver', 'renderer', 'electron'].flatMap((place) =>
  readdirSync(join(TOP, place), { recursive: true, encoding: 'utf8' })
    .filter((name) => /\.(ts|svelte)$/.test(name))
    .map((name) => ({ name: `${place}/${name}`, text: readFileSync(join(TOP, place, name), 'utf8') })),
);

/** Files outside the room of words that hold a name as a string literal. */
const holding = (kind: string): readonly string[] =>
  files
    .filter(({ name, text }) => !name.startsWith('solver/words/') && text.includes(`'${kind}'`))
    .map(({ name }) => name);

describe('the name of a kind', () => {
  it.each(Object.entries(ALLOWED))('%s is a literal in no more than %i files', (kind, most) => {
    const found = holding(kind);
    expect(found.length, found.join('\n')).toBeLessThanOrEqual(most);
    expect(found.length).toBeGreaterThan(0);
  });
});

describe('a new file format', () => {
  it('does not compile until its table has it', () => {
    const path = join(TOP, 'solver/files/formats/format.ts');
    expect(faults(path, readFileSync(path, 'utf8'))).toEqual([]);
    const more = readFileSync(path, 'utf8').replace("FormatName = 'dxf'", "FormatName = 'dummy' | 'dxf'");
    expect(faults(path, more)).toEqual(['formats.ts']);
  }, 60_000);

  it('has an ending of its own', () => {
    const endings = Object.values(FORMATS).map(({ ending }) => ending);
    expect(new Set(endings).size).toBe(endings.length);
  });
});

/** Names of the files of the formats' folder that do not compile when one file reads as `text`. */
function faults(path: string, text: string): readonly string[] {
  const config = ts.readConfigFile(join(TOP, 'tsconfig.json'), ts.sys.readFile);
  const { options } = ts.parseJsonConfigFileContent(config.config, ts.sys, TOP);
  const host = ts.createCompilerHost(options);
  const { readFile, getSourceFile } = host;
  host.readFile = (name) => (resolve(name) === path ? text : readFile(name));
  host.getSourceFile = (name, version, ...rest) =>
    resolve(name) === path ? ts.createSourceFile(name, text, version) : getSourceFile(name, version, ...rest);
  const program = ts.createProgram([join(TOP, 'solver/files/formats/formats.ts')], options, host);
  const broken = program
    .getSourceFiles()
    .filter(({ fileName }) => fileName.includes('/solver/files/'))
    .filter((file) => program.getSemanticDiagnostics(file).length > 0);
  return broken.map(({ fileName }) => fileName.slice(fileName.lastIndexOf('/') + 1));
}
