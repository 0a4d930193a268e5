/** Which points certainly stand at one place: pipes with the arbor they ride on, and points joined by `samePlace`. */
import { joinedByRule } from '../ruleKinds/ruleKinds.ts';
import type { Movement } from '../schema.ts';

/** Gives, for a point's id, the id that stands for its place; two points share a place where these are equal. */
export function axesOf(movement: Movement): (point: string) => string {
  const parent = new Map<string, string>();
  const find = (id: string): string => {
    let root = id;
    for (let next = parent.get(root); next !== undefined; next = parent.get(root)) root = next;
    // Shortens the way for the next question.
    for (let step = id; step !== root; ) {
      const next = parent.get(step) ?? root;
      parent.set(step, root);
      step = next;
    }
    return root;
  };
  const join = (a: string, b: string): void => {
    const rootA = find(a);
    const rootB = find(b);
    if (rootA !== rootB) parent.set(rootB, rootA);
  };
  for (const { id, ridesOn } of movement.arbors) if (ridesOn !== undefined) join(ridesOn, id);
  for (const rule of movement.rules) {
    const joined = joinedByRule(rule);
    if (joined) join(...joined);
  }
  return find;
}
