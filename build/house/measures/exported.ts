/** What files export: how much a face shows, names exported twice, exports without a word. */
import ts from 'typescript';
import type { Sources } from '../sources.ts';
import { counted, type Measured } from './measure.ts';

const isExported = (node: ts.Node): boolean =>
  ts.canHaveModifiers(node) &&
  (ts.getModifiers(node) ?? []).some((modifier) => modifier.kind === ts.SyntaxKind.ExportKeyword);

/** A thing that a file defines and exports. */
interface Defined {
  readonly name: string;
  /** The node that carries the doc comment. */
  readonly statement: ts.Statement;
  /** What the name stands for: a function, a type, a value. */
  readonly node: ts.Node;
}

/** What the statements of a file define under a name; passing on from another file is not defining. */
function definedIn(file: ts.SourceFile): readonly Defined[] {
  return file.statements.flatMap((statement): readonly Defined[] => {
    if (ts.isVariableStatement(statement)) {
      return statement.declarationList.declarations.map((node) => ({ name: node.name.getText(file), statement, node }));
    }
    const isNamed =
      ts.isFunctionDeclaration(statement) ||
      ts.isClassDeclaration(statement) ||
      ts.isInterfaceDeclaration(statement) ||
      ts.isTypeAliasDeclaration(statement);
    return isNamed && statement.name ? [{ name: statement.name.text, statement, node: statement }] : [];
  });
}

/** Names of the largest face: `index.ts` of a room and of the parts that the import rules name as public. */
export function largestFace(sources: Sources): Measured {
  const faces = sources.files
    .filter((file) => /^solver\/[^/]+\/([^/]+\/)?index\.ts$/.test(sources.pathOf(file)))
    .map((file) => {
      const module = sources.checker.getSymbolAtLocation(file);
      const names = module ? sources.checker.getExportsOfModule(module).length : 0;
      return { names, place: `${sources.pathOf(file)}  ${names} names` };
    })
    .sort((a, b) => b.names - a.names);
  return { value: faces[0]?.names ?? 0, places: faces.map(({ place }) => place) };
}

/** Names that two files export. A value and a type of one name in one file are one thing. */
export function namesExportedTwice(sources: Sources): Measured {
  const files = new Map<string, Set<string>>();
  for (const file of sources.files) {
    for (const { name, statement } of definedIn(file)) {
      if (!isExported(statement)) continue;
      const known = files.get(name) ?? new Set();
      files.set(name, known.add(sources.pathOf(file)));
    }
  }
  const twice = [...files].filter(([, paths]) => paths.size > 1);
  return counted(twice.map(([name, paths]) => `${[...paths].join(', ')}  ${name}`));
}

const isFunctionValue = (node: ts.Node | undefined): boolean =>
  node !== undefined && (ts.isArrowFunction(node) || ts.isFunctionExpression(node));

/** Whether a type spells out fields of its own; those of a type argument belong to the other type. */
function hasLiteralFields(type: ts.TypeNode): boolean {
  if (ts.isTypeLiteralNode(type)) return type.members.length > 0;
  if (ts.isUnionTypeNode(type) || ts.isIntersectionTypeNode(type)) return type.types.some(hasLiteralFields);
  if (ts.isParenthesizedTypeNode(type) || ts.isTypeOperatorNode(type)) return hasLiteralFields(type.type);
  return ts.isArrayTypeNode(type) && hasLiteralFields(type.elementType);
}

/** Whether a doc comment is owed: functions, and types that have fields. */
function owesWords({ node, statement }: Defined): boolean {
  if (ts.isFunctionDeclaration(node)) return isExported(statement);
  if (ts.isVariableDeclaration(node)) return isExported(statement) && isFunctionValue(node.initializer);
  if (ts.isInterfaceDeclaration(node) || ts.isClassDeclaration(node)) return !isProps(node);
  return ts.isTypeAliasDeclaration(node) && hasLiteralFields(node.type);
}

/** What a component takes stands in its own first comment. */
const isProps = (node: ts.InterfaceDeclaration | ts.ClassDeclaration): boolean => node.name?.text === 'Props';

/** Words that say nothing by themselves. */
const EMPTY = new Set('a an the of in on at to for from with by and or is are it its this that these one'.split(' '));

const wordsOf = (text: string): readonly string[] =>
  text
    .replace(/([a-z0-9])([A-Z])/g, '$1 $2')
    .toLowerCase()
    .split(/[^a-z0-9°±]+/)
    .filter((word) => word !== '' && !EMPTY.has(word));

/** Whether a comment has a word that the name has not, plurals put aside. */
function saysMore(name: string, comment: string): boolean {
  const known = wordsOf(name);
  return wordsOf(comment).some(
    (word) => !known.some((has) => has === word || `${has}s` === word || has === `${word}s`),
  );
}

/** The doc comment of a statement. The one at the top of a file is the file's where a line is left free below it. */
function docOf(statement: ts.Statement, file: ts.SourceFile): string | undefined {
  const last = ts.getLeadingCommentRanges(file.text, statement.getFullStart())?.at(-1);
  if (last === undefined) return undefined;
  const text = file.text.slice(last.pos, last.end);
  const below = file.text.slice(last.end, statement.getStart(file));
  return text.startsWith('/**') && (last.pos > 0 || !/\n\s*\n/.test(below)) ? text : undefined;
}

/** Exported functions, and types with fields, without a doc comment that says what the name does not. */
export function withoutWords(sources: Sources): Measured {
  const places = sources.files.flatMap((file) => {
    const overloads = new Set<string>();
    return definedIn(file).flatMap((defined) => {
      if (!owesWords(defined) || overloads.has(defined.name)) return [];
      overloads.add(defined.name);
      const doc = docOf(defined.statement, file);
      if (doc !== undefined && saysMore(defined.name, doc)) return [];
      return [`${sources.placeOf(defined.statement)}  ${defined.name}`];
    });
  });
  return counted(places);
}
