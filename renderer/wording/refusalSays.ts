/** A refused edit as it is told on the screen: by the name of the part, not by its place in the file. */
import type { Refused } from '../../solver/movement/index.ts';

/** "Base plate: found a side that …; expected …; …." or the refusal's own sentence where no part is at fault. */
export function refusalSays(refused: Refused, nameOf: (id: string) => string): string {
  const [first] = refused.problems ?? [];
  if (!first) return refused.says;
  const { id, found, expected, remedy } = first;
  const whose = id === undefined ? fieldOf(first.path) : nameOf(id);
  return `${whose}: found ${found}; expected ${expected}; ${remedy}.`;
}

/** The last field that a path names, as words: "outline.radius" as "Radius". */
function fieldOf(path: string): string {
  const field = [...path.matchAll(/[A-Za-z]+/g)].at(-1)?.[0] ?? 'The movement';
  const words = field.replace(/[A-Z]/g, (letter) => ` ${letter.toLowerCase()}`);
  return words.charAt(0).toUpperCase() + words.slice(1);
}
