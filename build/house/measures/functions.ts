/** How long functions are. Functions without a name of their own count with the one that they stand in. */
import ts from 'typescript';
import { nodesOf, type Sources } from '../sources.ts';
import type { Measured } from './measure.ts';

/** Lines over which a function must be one algorithm. */
const LONG = 60;

interface Sized {
  readonly lines: number;
  readonly place: string;
}

type WithBody = ts.FunctionLikeDeclaration & { readonly body: ts.Node };

function isNamedFunction(node: ts.Node): node is WithBody {
  if (!ts.isFunctionLike(node) || !('body' in node) || node.body === undefined) return false;
  if (!ts.isArrowFunction(node) && !ts.isFunctionExpression(node)) return true;
  return (
    ts.isVariableDeclaration(node.parent) ||
    ts.isPropertyAssignment(node.parent) ||
    ts.isPropertyDeclaration(node.parent)
  );
}

function nameOf(node: WithBody): string {
  const own = node.name ?? (node.parent as ts.NamedDeclaration).name;
  return own?.getText() ?? 'constructor';
}

function sizedFunctions(sources: Sources): readonly Sized[] {
  const sized = sources.files.flatMap((file) =>
    [...nodesOf(file)].filter(isNamedFunction).map((node) => {
      const line = (at: number): number => file.getLineAndCharacterOfPosition(at).line;
      const lines = line(node.getEnd()) - line(node.getStart(file)) + 1;
      return { lines, place: `${sources.placeOf(node)}  ${nameOf(node)}, ${lines} lines` };
    }),
  );
  return sized.sort((a, b) => b.lines - a.lines);
}

/** The length that nine functions in ten do not exceed, lines. */
export function ninthDecile(sources: Sources): Measured {
  const sized = sizedFunctions(sources);
  return {
    value: sized[Math.floor(sized.length * 0.1)]?.lines ?? 0,
    places: sized.slice(0, 40).map((one) => one.place),
  };
}

/** Share of the functions over 60 lines, percent to two decimals. */
export function overLong(sources: Sources): Measured {
  const sized = sizedFunctions(sources);
  const long = sized.filter(({ lines }) => lines > LONG);
  const share = sized.length === 0 ? 0 : (100 * long.length) / sized.length;
  return { value: Math.round(share * 100) / 100, places: long.map((one) => one.place) };
}
