/**
 * Fields of the window's state that are written from outside their part.
 *
 * State is what a file named `*.svelte.ts` or one of `renderer/state` declares. A part is the first name below
 * `renderer/state` (`document.svelte.ts` and all of a folder `document/`), elsewhere the file.
 */
import ts from 'typescript';
import { nodesOf, type Sources } from '../sources.ts';
import { counted, type Measured } from './measure.ts';

const isState = (path: string): boolean => path.startsWith('renderer/state/') || path.endsWith('.svelte.ts');

const partOf = (path: string): string => /^renderer\/state\/[^/.]+/.exec(path)?.[0] ?? path;

const isMember = (node: ts.Node): node is ts.PropertyAccessExpression | ts.ElementAccessExpression =>
  ts.isPropertyAccessExpression(node) || ts.isElementAccessExpression(node);

/** The members that an expression on the left of an assignment writes, patterns taken apart. */
function membersIn(target: ts.Node): readonly ts.Node[] {
  if (isMember(target)) return [target];
  if (ts.isParenthesizedExpression(target) || ts.isNonNullExpression(target) || ts.isAsExpression(target)) {
    return membersIn(target.expression);
  }
  if (ts.isArrayLiteralExpression(target)) return target.elements.flatMap(membersIn);
  if (!ts.isObjectLiteralExpression(target)) return [];
  return target.properties.flatMap((one) => (ts.isPropertyAssignment(one) ? membersIn(one.initializer) : []));
}

const isAssignment = (kind: ts.SyntaxKind): boolean =>
  kind >= ts.SyntaxKind.FirstAssignment && kind <= ts.SyntaxKind.LastAssignment;

const isStep = (node: ts.Node): node is ts.PrefixUnaryExpression | ts.PostfixUnaryExpression =>
  (ts.isPrefixUnaryExpression(node) || ts.isPostfixUnaryExpression(node)) &&
  (node.operator === ts.SyntaxKind.PlusPlusToken || node.operator === ts.SyntaxKind.MinusMinusToken);

/** What a node writes to; `isMarkup`: it stands for something that the markup writes. */
function writtenBy(node: ts.Node, isMarkup: boolean): readonly ts.Node[] {
  if (isMarkup) return ts.isVoidExpression(node) ? membersIn(node.expression) : [];
  if (ts.isBinaryExpression(node) && isAssignment(node.operatorToken.kind)) return membersIn(node.left);
  if (isStep(node)) return membersIn(node.operand);
  return ts.isDeleteExpression(node) ? membersIn(node.expression) : [];
}

/** The file that declares the member, as a path; undefined where it is not ours. */
function declaredIn(sources: Sources, member: ts.Node): string | undefined {
  const at = ts.isPropertyAccessExpression(member)
    ? member.name
    : (member as ts.ElementAccessExpression).argumentExpression;
  const declaration = sources.checker.getSymbolAtLocation(at)?.declarations?.[0];
  return declaration && sources.pathOf(declaration.getSourceFile());
}

/** Places that write a field of a part of the state from outside it. */
export function foreignWrites(sources: Sources): Measured {
  const places: string[] = [];
  for (const file of sources.files) {
    const own = partOf(sources.pathOf(file));
    const markup = sources.markupStart(file);
    for (const node of nodesOf(file)) {
      for (const member of writtenBy(node, node.getStart(file) >= markup)) {
        const from = declaredIn(sources, member);
        if (from !== undefined && isState(from) && partOf(from) !== own) {
          places.push(`${sources.placeOf(member)}  ${member.getText(file)}, of ${from}`);
        }
      }
    }
  }
  return counted(places);
}
