/** What is joined to the drive, and by which way. */
import type { ArborId } from '../../movement/ids.ts';
import type { Movement } from '../../movement/schema.ts';
import type { Axes } from './axes.ts';
import type { Link } from './linkage.ts';
import type { Turning } from './turning.ts';

/** Everything joined to the drive by links or arms, each with the link that reaches it by the shortest way. */
export function reachedFrom(
  drive: Turning['drive'],
  links: readonly Link[],
  axes: Axes,
  movement: Movement,
): ReadonlyMap<ArborId, Link | undefined> {
  const reached = new Map<ArborId, Link | undefined>();
  if (!drive) return reached;
  const next = new Map<ArborId, { readonly to: ArborId; readonly link?: Link }[]>();
  const touch = (from: ArborId, to: ArborId, link?: Link): void => {
    const list = next.get(from);
    const step = link ? { to, link } : { to };
    if (list) list.push(step);
    else next.set(from, [step]);
  };
  for (const link of links) {
    touch(link.from, link.to, link);
    touch(link.to, link.from, link);
  }
  for (const { id } of movement.arbors) {
    const arm = axes.armOf(id);
    if (arm === undefined) continue;
    touch(arm, id);
    touch(id, arm);
  }
  const queue = [drive.arbor];
  reached.set(drive.arbor, undefined);
  for (let index = 0; index < queue.length; index++) {
    const at = queue[index] as ArborId; // below its length
    for (const { to, link } of next.get(at) ?? []) {
      if (reached.has(to)) continue;
      reached.set(to, link);
      queue.push(to);
    }
  }
  return reached;
}
