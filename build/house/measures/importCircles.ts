/** Files that reach themselves through their imports, imports of types counted. */
import ts from 'typescript';
import type { Sources } from '../sources.ts';
import { counted, type Measured } from './measure.ts';

/** The shipped files that a file imports, or passes on, for values or for types. */
function importsOf(sources: Sources, file: ts.SourceFile): readonly ts.SourceFile[] {
  const shipped = new Set(sources.files);
  const found: ts.SourceFile[] = [];
  for (const statement of file.statements) {
    if (!ts.isImportDeclaration(statement) && !ts.isExportDeclaration(statement)) continue;
    const specifier = statement.moduleSpecifier;
    const module = specifier && sources.checker.getSymbolAtLocation(specifier);
    const to = module?.declarations?.[0];
    if (to && ts.isSourceFile(to) && shipped.has(to)) found.push(to);
  }
  return found;
}

/** Strongly connected sets of files (R. Tarjan, "Depth-first search and linear graph algorithms", 1972). */
function circlesOf<T>(all: readonly T[], next: (one: T) => readonly T[]): readonly (readonly T[])[] {
  const order = new Map<T, number>();
  const low = new Map<T, number>();
  const stack: T[] = [];
  const isOpen = new Set<T>();
  const circles: T[][] = [];
  const close = (one: T): void => {
    const circle = stack.splice(stack.lastIndexOf(one));
    for (const member of circle) isOpen.delete(member);
    if (circle.length > 1 || next(one).includes(one)) circles.push(circle);
  };
  const visit = (one: T): void => {
    order.set(one, order.size);
    low.set(one, order.get(one) as number);
    stack.push(one);
    isOpen.add(one);
    for (const other of next(one)) {
      if (!order.has(other)) visit(other);
      if (isOpen.has(other)) low.set(one, Math.min(low.get(one) as number, low.get(other) as number));
    }
    if (low.get(one) === order.get(one)) close(one);
  };
  for (const one of all) if (!order.has(one)) visit(one);
  return circles;
}

/** Files in circles of imports; one place a circle would hide how large it is, so each file counts. */
export function importCircles(sources: Sources): Measured {
  const edges = new Map(sources.files.map((file) => [file, importsOf(sources, file)]));
  const circles = circlesOf(sources.files, (file) => edges.get(file) ?? []);
  const places = circles.flatMap((circle) =>
    circle.map((file) => `${sources.pathOf(file)}  in a circle of ${circle.length}`),
  );
  return counted(places);
}
