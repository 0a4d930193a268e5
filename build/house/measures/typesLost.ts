/** Where a type is lost: `any`, written or inferred for a variable. */
import ts from 'typescript';
import { nodesOf, type Sources } from '../sources.ts';
import { counted, type Measured } from './measure.ts';

/** Places of `any`. What the markup of components binds is left to svelte-check. */
export function anyTypes(sources: Sources): Measured {
  const places: string[] = [];
  for (const file of sources.files) {
    const end = sources.markupStart(file);
    for (const node of nodesOf(file)) {
      if (node.getStart(file) >= end) continue;
      const isWritten = node.kind === ts.SyntaxKind.AnyKeyword;
      const isInferred =
        (ts.isVariableDeclaration(node) || ts.isParameter(node) || ts.isBindingElement(node)) &&
        ts.isIdentifier(node.name) &&
        (sources.checker.getTypeAtLocation(node).flags & ts.TypeFlags.Any) !== 0;
      if (isWritten || isInferred) places.push(`${sources.placeOf(node)}  ${node.getText(file).split('\n')[0]}`);
    }
  }
  return counted(places);
}
