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
  const { wheels, plates, walls, openings } = preview;
  const isSame =
    wheels === movement.wheels &&
    plates === movement.plates &&
    walls === movement.walls &&
    openings === movement.openings &&
    samePoints(preview.arbors, movement.arbors) &&
    samePoints(preview.posts, movement.posts) &&
    samePoints(preview.marks, movement.marks);
  return isSame ? movement : preview;
}

/** Are these the same arbors, posts or marks, apart from their places? */
function samePoints(a: readonly object[], b: readonly object[]): boolean {
  return a === b || (a.length === b.length && a.every((point, index) => sameButForPlace(point, b[index] ?? {})));
}

const PLACE: ReadonlySet<string> = new Set(['at', 'crossing']);

function sameButForPlace(a: object, b: object): boolean {
  if (a === b) return true;
  const own = Object.keys(a);
  return (
    own.length === Object.keys(b).length &&
    own.every(
      (field) => Object.hasOwn(b, field) && (PLACE.has(field) || Reflect.get(a, field) === Reflect.get(b, field)),
    )
  );
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
