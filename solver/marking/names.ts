/**
 * What parts are called: the one namer. A part has the maker's name, else what it is ("wheel of 64 on Third", "post 2").
 *
 * Two parts with the same words are told apart by where they are or what they carry; only where nothing else tells them
 * apart does the id stand behind the words in brackets.
 */
import type { PointId } from '../movement/ids.ts';
import type { Movement, Wheel } from '../movement/schema.ts';
import { isPinion } from '../teeth/index.ts';

/** A name on one line: a name may hold line breaks, a sheet's line may not; undefined where nothing is left. */
function oneLine(name: string | undefined): string | undefined {
  return name?.replace(/[\p{Cc}\s]+/gu, ' ').trim() || undefined;
}

/** Collections whose parts are named by kind and number where the maker gave no name. */
const KINDS = {
  arbors: 'arbor',
  posts: 'post',
  marks: 'mark',
  plates: 'plate',
  walls: 'wall',
  openings: 'opening',
} as const satisfies Partial<Record<keyof Movement, string>>;

type Named = readonly [id: string, words: string];

function ownNames(movement: Movement): Named[] {
  return Object.entries(KINDS).flatMap(([collection, kind]) =>
    // Every collection named above is a list of parts with an id and perhaps a name.
    (movement[collection as keyof typeof KINDS] ?? []).map(({ id, name }, at): Named => {
      return [id, oneLine(name) ?? `${kind} ${at + 1}`];
    }),
  );
}

/** "wheel of 64", or "pinion of 8": what a toothed part is called without its place. */
export function toothedWords(wheel: Wheel, movement: Movement): string {
  return `${isPinion(wheel, movement) ? 'pinion' : 'wheel'} of ${wheel.teeth}`;
}

/** Words that stand more than once, in any case of letters, get the id behind them. */
function told(apart: readonly Named[]): Map<string, string> {
  const counts = new Map<string, number>();
  for (const [, words] of apart) counts.set(words.toLowerCase(), (counts.get(words.toLowerCase()) ?? 0) + 1);
  return new Map(
    apart.map(([id, words]) => [id, (counts.get(words.toLowerCase()) ?? 0) > 1 ? `${words} (${id})` : words]),
  );
}

const known = new WeakMap<Movement, ReadonlyMap<string, string>>();

/** Words for every part that can be pointed at, by id; made once for a document. */
export function namesOf(movement: Movement): ReadonlyMap<string, string> {
  const last = known.get(movement);
  if (last) return last;
  const plain = new Map(ownNames(movement));
  const wheels = movement.wheels.map((wheel): Named => {
    const on = plain.get(wheel.arbor) ?? wheel.arbor;
    return [wheel.id, oneLine(wheel.name) ?? `${toothedWords(wheel, movement)} on ${on}`];
  });
  const names = told([...plain, ...wheels]);
  known.set(movement, names);
  return names;
}

/** The namer of a document. An id that it does not know (of a part that is gone) is given back as it is. */
export function namer(movement: Movement): (id: string) => string {
  const names = namesOf(movement);
  return (id) => names.get(id) ?? id;
}

/** Where a point stands, for a rule that names wheels: the arbor's name. */
export function arborOfWheel(movement: Movement, wheelId: string): PointId | undefined {
  return movement.wheels.find(({ id }) => id === wheelId)?.arbor;
}
