/** Every string that the program holds: literals and templates of TypeScript, and the text of components. */
import { readdirSync, readFileSync } from 'node:fs';
import { join, relative } from 'node:path';
import { fileURLToPath } from 'node:url';
import { parse } from 'svelte/compiler';
import ts from 'typescript';

const TOP = fileURLToPath(new URL('../..', import.meta.url));
/** Stands for an expression in a template. */
export const HOLE = '\u0000';

/** One string, where it stands, and its text with a hole for each expression in it. */
export interface ShownString {
  readonly where: string;
  readonly text: string;
}

function filesIn(folder: string): readonly string[] {
  return readdirSync(join(TOP, folder), { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile() && /\.(ts|svelte)$/.test(entry.name))
    .map((entry) => join(entry.parentPath, entry.name));
}

function stringsOfScript(text: string, path: string): readonly string[] {
  const source = ts.createSourceFile(path, text, ts.ScriptTarget.Latest, true);
  const found: string[] = [];
  const visit = (node: ts.Node): void => {
    if (ts.isImportDeclaration(node) || ts.isExportDeclaration(node) || ts.isLiteralTypeNode(node)) return;
    if (ts.isStringLiteral(node) || ts.isNoSubstitutionTemplateLiteral(node)) found.push(node.text);
    if (ts.isTemplateExpression(node)) {
      found.push([node.head.text, ...node.templateSpans.map(({ literal }) => literal.text)].join(HOLE));
    }
    ts.forEachChild(node, visit);
  };
  visit(source);
  return found;
}

/** What the tree of a component may hold of interest. */
interface ComponentNode {
  readonly type?: string;
  readonly data?: unknown;
  readonly value?: unknown;
  readonly quasis?: readonly { readonly value: { readonly cooked: string } }[];
}

function stringsOfComponent(text: string): readonly string[] {
  const found: string[] = [];
  const seen = new Set<object>();
  const visit = (node: ComponentNode): void => {
    if (seen.has(node) || node.type === 'StyleSheet' || node.type === 'ImportDeclaration') return;
    seen.add(node);
    if (node.type === 'Text' && typeof node.data === 'string') found.push(node.data.replace(/\s+/g, ' '));
    if (node.type === 'Literal' && typeof node.value === 'string') found.push(node.value);
    if (node.type === 'TemplateLiteral') found.push((node.quasis ?? []).map(({ value }) => value.cooked).join(HOLE));
    for (const child of Object.values(node).flat()) {
      if (typeof child === 'object' && child !== null) visit(child as ComponentNode); // parts of a tree are nodes
    }
  };
  visit(parse(text, { modern: true }) as unknown as ComponentNode); // the tree's own type has no common node
  return found;
}

/** All strings of solver, window and shell. */
export function shownStrings(): readonly ShownString[] {
  return ['solver', 'renderer', 'electron'].flatMap(filesIn).flatMap((path) => {
    const text = readFileSync(path, 'utf8');
    const strings = path.endsWith('.svelte') ? stringsOfComponent(text) : stringsOfScript(text, path);
    return strings.map((each) => ({ where: relative(TOP, path), text: each }));
  });
}
