/**
 * What ships, read as one TypeScript program: solver, window and shell, the scripts of the components included.
 *
 * A component stands in the program as a file `Name.svelte.script.ts`: its scripts as they are, then one statement for
 * each place that its markup writes to, so that the checker sees those too.
 */
import { readdirSync, readFileSync } from 'node:fs';
import { join, relative, resolve } from 'node:path';
import { parse } from 'svelte/compiler';
import ts from 'typescript';

/** The folders that ship. */
export const SHIPPED = ['solver', 'renderer', 'electron'] as const;

const SCRIPT = '.script.ts';
const WRITES = '\n/* written by the markup */\n';

/** A program of the files below `top` and what is needed to ask it. */
export interface Sources {
  readonly top: string;
  readonly program: ts.Program;
  readonly checker: ts.TypeChecker;
  /** The files of `SHIPPED`, tests left out. */
  readonly files: readonly ts.SourceFile[];
  /** Path of a file below `top`, with the name that stands on the disk. */
  readonly pathOf: (file: ts.SourceFile) => string;
  /** Where a node stands, `solver/teeth/index.ts:12`. */
  readonly placeOf: (node: ts.Node) => string;
  /** Where the statements begin that stand for what the markup of a component writes; Infinity in other files. */
  readonly markupStart: (file: ts.SourceFile) => number;
}

interface MarkupNode {
  readonly type?: string;
  readonly start?: number;
  readonly end?: number;
  readonly [field: string]: unknown;
}

const isMarkupNode = (value: unknown): value is MarkupNode => typeof value === 'object' && value !== null;

/** What a node of the markup writes to, or undefined. */
function targetOf(node: MarkupNode): unknown {
  if (node.type === 'AssignmentExpression') return node['left'];
  if (node.type === 'UpdateExpression') return node['argument'];
  return node.type === 'BindDirective' ? node['expression'] : undefined;
}

/** Places that the markup writes to, as source text (`bench.look`). */
function writtenByMarkup(text: string, from: unknown): readonly string[] {
  const found: string[] = [];
  const walk = (value: unknown): void => {
    if (Array.isArray(value)) for (const one of value) walk(one);
    if (!isMarkupNode(value) || Array.isArray(value)) return;
    const target = targetOf(value);
    if (isMarkupNode(target) && target.type === 'MemberExpression') found.push(text.slice(target.start, target.end));
    for (const [name, field] of Object.entries(value)) if (name !== 'parent') walk(field);
  };
  walk(from);
  return found;
}

/** A component as TypeScript; lines of its own script keep their numbers. */
function scriptOf(text: string): string {
  const { instance, module, fragment } = parse(text, { modern: true });
  const blank = text.replace(/[^\n]/g, ' ');
  let script = blank;
  for (const part of [module, instance]) {
    if (!part) continue;
    const open = text.indexOf('>', part.start) + 1;
    const close = text.lastIndexOf('</script', part.end);
    script = script.slice(0, open) + text.slice(open, close) + script.slice(close);
  }
  const writes = writtenByMarkup(text, fragment).map((target) => `void (${target});\n`);
  return `${script}${WRITES}${writes.join('')}export default undefined as unknown;\n`;
}

/** Reads components as their scripts and finds them where they are imported. */
function hostFor(options: ts.CompilerOptions): ts.CompilerHost {
  const host = ts.createCompilerHost(options);
  const { readFile, fileExists, getSourceFile } = host;
  const component = (path: string): string | undefined =>
    path.endsWith(`.svelte${SCRIPT}`) ? path.slice(0, -SCRIPT.length) : undefined;
  const read = (path: string): string | undefined => {
    const from = component(path);
    return from === undefined ? readFile(path) : scriptOf(readFileSync(from, 'utf8'));
  };
  return {
    ...host,
    readFile: read,
    fileExists: (path) => fileExists(component(path) ?? path),
    getSourceFile: (path, target, ...more) => {
      if (component(path) === undefined) return getSourceFile(path, target, ...more);
      return ts.createSourceFile(path, read(path) ?? '', target, true);
    },
    resolveModuleNameLiterals: (names, from, _redirected, compilerOptions) =>
      names.map(({ text }) => {
        if (text.startsWith('.') && text.endsWith('.svelte')) {
          const resolvedFileName = resolve(from, '..', text) + SCRIPT;
          return { resolvedModule: { resolvedFileName, extension: ts.Extension.Ts } };
        }
        return ts.resolveModuleName(text, from, compilerOptions, host);
      }),
  };
}

function shippedFiles(top: string): readonly string[] {
  const below = (folder: string): readonly string[] =>
    readdirSync(join(top, folder), { withFileTypes: true, recursive: true })
      .filter((entry) => entry.isFile() && /\.(ts|svelte)$/.test(entry.name))
      .map((entry) => join(entry.parentPath, entry.name));
  const paths = SHIPPED.flatMap((folder) => (readdirSync(top).includes(folder) ? below(folder) : []));
  return paths.map((path) => (path.endsWith('.svelte') ? path + SCRIPT : path)).sort();
}

/**
 * Reads what ships below a folder.
 *
 * @param top  a checkout, or a small tree of a test; its `tsconfig.json` gives the options
 */
export function readSources(top: string): Sources {
  const config = ts.readConfigFile(join(top, 'tsconfig.json'), ts.sys.readFile);
  const { options } = ts.parseJsonConfigFileContent({ ...config.config, include: [], files: [] }, ts.sys, top);
  const names = shippedFiles(top);
  const program = ts.createProgram({ rootNames: names, options, host: hostFor(options) });
  const isShipped = new Set(names);
  const pathOf = (file: ts.SourceFile): string => {
    const path = relative(top, file.fileName);
    return path.endsWith(SCRIPT) ? path.slice(0, -SCRIPT.length) : path;
  };
  return {
    top,
    program,
    checker: program.getTypeChecker(),
    files: program.getSourceFiles().filter((file) => isShipped.has(file.fileName)),
    pathOf,
    placeOf: (node) => {
      const file = node.getSourceFile();
      return `${pathOf(file)}:${file.getLineAndCharacterOfPosition(node.getStart(file)).line + 1}`;
    },
    markupStart: (file) => {
      const start = file.fileName.endsWith(SCRIPT) ? file.text.lastIndexOf(WRITES) : -1;
      return start < 0 ? Number.POSITIVE_INFINITY : start;
    },
  };
}

/** Every node of a file, outer before inner. */
export function* nodesOf(node: ts.Node): Generator<ts.Node> {
  yield node;
  const inner: ts.Node[] = [];
  ts.forEachChild(node, (child) => {
    inner.push(child);
  });
  for (const child of inner) yield* nodesOf(child);
}
