/** Lines of style that components keep for themselves: what more than one of them needs belongs to the kit. */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Sources } from '../sources.ts';
import type { Measured } from './measure.ts';

/** Lines between the tags of a component's style. */
function linesOf(text: string): number {
  const style = /<style[^>]*>\n(.*?)<\/style>/s.exec(text)?.[1] ?? '';
  return style.split('\n').length - 1;
}

/** All lines of style in components, the components with the most of them first. */
export function styleLines({ top, files, pathOf }: Sources): Measured {
  const own = files
    .map(pathOf)
    .filter((path) => path.endsWith('.svelte'))
    .map((path) => ({ path, lines: linesOf(readFileSync(join(top, path), 'utf8')) }))
    .sort((a, b) => b.lines - a.lines);
  return {
    value: own.reduce((sum, { lines }) => sum + lines, 0),
    places: own.map(({ path, lines }) => `${path}  ${lines} lines`),
  };
}
