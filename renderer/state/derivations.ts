/** How the state derives what it shows: small pure functions of the movement. */
import type { Movement, PartId } from '../../solver/movement/index.ts';

const NOTHING: ReadonlySet<string> = new Set();

/** What is chosen, with the wheels of chosen arbors. */
export function withWheels(chosen: readonly PartId[], { wheels }: Movement): ReadonlySet<string> {
  if (chosen.length === 0) return NOTHING;
  const all = new Set<string>(chosen);
  for (const { id, arbor } of wheels) if (all.has(arbor)) all.add(id);
  return all;
}

/** `movement` where `preview` has the same parts, apart from places and rules. */
export function samePartsAs(preview: Movement, movement: Movement): Movement {
  const isSame = preview.wheels === movement.wheels && preview.arbors.length === movement.arbors.length;
  return isSame && preview.posts.length === movement.posts.length ? movement : preview;
}

/** A function of the movement that may start from its own last result, and is not asked twice about one movement. */
export function startingFromLast<Result>(
  make: (movement: Movement, last?: Result) => Result,
): (movement: Movement) => Result {
  let known: { readonly movement: Movement; readonly result: Result } | undefined;
  return (movement) => {
    if (known?.movement !== movement) known = { movement, result: make(movement, known?.result) };
    return known.result;
  };
}
