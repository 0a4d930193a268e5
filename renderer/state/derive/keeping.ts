/** How the state derives what it shows: small pure functions of the movement. */

import type { PartId } from '../../../solver/movement/ids.ts';
import { joinedByRule } from '../../../solver/movement/index.ts';
import type { Movement } from '../../../solver/movement/schema.ts';

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
      (field) =>
        Object.hasOwn(b, field) && (PLACE.has(field) || sameValue(Reflect.get(a, field), Reflect.get(b, field))),
    )
  );
}

/** An arbor that was moved is read anew, so its collars and bearings are others with the same numbers. */
function sameValue(a: unknown, b: unknown): boolean {
  if (Object.is(a, b)) return true;
  if (typeof a !== 'object' || typeof b !== 'object' || a === null || b === null) return false;
  const own = Object.keys(a);
  return (
    own.length === Object.keys(b).length &&
    own.every((field) => Object.hasOwn(b, field) && sameValue(Reflect.get(a, field), Reflect.get(b, field)))
  );
}

/**
 * A function that gives the last movement it gave, as long as the train is the same: what turns, what it is called and
 * how large it is. Places, and rules that only place, may be others. Lists and drawings that depend on the train alone
 * are then not made anew after every drag.
 */
export function keepingTrain(): (movement: Movement) => Movement {
  let last: Movement | undefined;
  return (movement) => {
    if (!last || !sameTrain(movement, last)) last = movement;
    return last;
  };
}

const PLACING: ReadonlySet<string> = new Set(['arbors', 'posts', 'marks', 'rules']);

function sameTrain(a: Movement, b: Movement): boolean {
  if (a === b) return true;
  // The sketch tells the sides of a coupling between arbors.
  if (a.couplings.length > 0 && a.arbors !== b.arbors) return false;
  const own = Object.keys(a);
  const isSame = own.every((field) => PLACING.has(field) || Reflect.get(a, field) === Reflect.get(b, field));
  return (
    isSame &&
    own.length === Object.keys(b).length &&
    samePoints(a.arbors, b.arbors) &&
    samePoints(a.posts, b.posts) &&
    samePoints(a.marks, b.marks) &&
    sameJoining(a.rules, b.rules)
  );
}

/** Are these the same depths and shared places? All other rules only place. */
function sameJoining(a: Movement['rules'], b: Movement['rules']): boolean {
  if (a === b) return true;
  const joining = (rules: Movement['rules']) => rules.filter((rule) => rule.kind === 'depth' || joinedByRule(rule));
  const others = joining(b);
  const own = joining(a);
  return own.length === others.length && own.every((rule, index) => rule === others[index]);
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
