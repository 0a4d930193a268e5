/** Compiles the code with one file read as another text: shows what a new kind still lacks. */
import { readFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import ts from 'typescript';

const TOP = resolve(import.meta.dirname, '../..');

/** Which file reads differently, what is compiled with it, and in which files faults are looked for. */
export interface Trial {
  /** Path of the file from the top, and how its text is changed. */
  readonly file: string;
  readonly change: readonly [from: string, to: string];
  /** Files whose imports are compiled along. */
  readonly roots: readonly string[];
  /** Beginnings of the paths in which faults count. */
  readonly within: readonly string[];
}

/** Paths from the top of files that do not compile, in order; throws where the change changes nothing. */
export function notCompiling({ file, change, roots, within }: Trial): readonly string[] {
  const path = join(TOP, file);
  const text = readFileSync(path, 'utf8');
  const changed = text.replace(...change);
  if (changed === text) throw new Error(`${file} does not hold “${change[0]}”`);
  const config = ts.readConfigFile(join(TOP, 'tsconfig.json'), ts.sys.readFile);
  const { options } = ts.parseJsonConfigFileContent(config.config, ts.sys, TOP);
  const host = ts.createCompilerHost(options);
  const { readFile, getSourceFile } = host;
  host.readFile = (name) => (resolve(name) === path ? changed : readFile(name));
  host.getSourceFile = (name, version, ...rest) =>
    resolve(name) === path ? ts.createSourceFile(name, changed, version) : getSourceFile(name, version, ...rest);
  const program = ts.createProgram(
    roots.map((root) => join(TOP, root)),
    options,
    host,
  );
  return program
    .getSourceFiles()
    .filter(({ fileName }) => within.some((start) => fileName.startsWith(join(TOP, start))))
    .filter((each) => program.getSemanticDiagnostics(each).length > 0)
    .map(({ fileName }) => fileName.slice(TOP.length + 1))
    .sort();
}
