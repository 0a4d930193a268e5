/** Spoils the text of a movement file in ways that editors, disks, scripts and ill will spoil it; seeded. */
import { seeded } from '../planting/scenes/random.ts';

type Json = null | boolean | number | string | Json[] | { [name: string]: Json };
type Chance = () => number;

const below = (chance: Chance, count: number): number => Math.floor(chance() * count);
function oneOf<T>(chance: Chance, list: readonly T[]): T | undefined {
  return list[below(chance, list.length)];
}

/** Values that no field wants, or wants only just. */
const ODD: readonly Json[] = [
  null,
  true,
  0,
  -1,
  1e-320,
  1e308,
  -1e308,
  0.1 + 0.2,
  2 ** 53,
  '',
  ' ',
  '0',
  'constructor',
  '__proto__',
  'x'.repeat(10_000),
  [],
  {},
  [[[[[[]]]]]],
  { kind: 'circle', centre: [0, 0], radius: 1e-9 },
];

/** One list or record inside a document, with the names or numbers of what it holds. */
interface Holder {
  readonly value: Json[] | { [name: string]: Json };
  readonly keys: readonly string[];
}

function holdersOf(value: Json, found: Holder[] = []): Holder[] {
  if (typeof value !== 'object' || value === null) return found;
  const keys = Object.keys(value);
  found.push({ value, keys });
  for (const inner of Object.values(value)) holdersOf(inner, found);
  return found;
}

const put = (holder: Holder, key: string, value: Json): void => void Reflect.set(holder.value, key, value);
const copied = (value: Json): Json => structuredClone(value);

type Change = (document: Json, chance: Chance, holders: readonly Holder[]) => void;

/** Every number of a document that is no version, with where it stands. */
function numbersOf(holders: readonly Holder[]): readonly { readonly holder: Holder; readonly key: string }[] {
  return holders.flatMap((holder) =>
    holder.keys
      .filter((key) => key !== 'version' && typeof Reflect.get(holder.value, key) === 'number')
      .map((key) => ({ holder, key })),
  );
}

/** Changes that mostly give another sound document. */
const MILD: readonly Change[] = [
  function nudged(_, chance, holders) {
    const one = oneOf(chance, numbersOf(holders));
    if (!one) return;
    const value = Reflect.get(one.holder.value, one.key) as number;
    const odd = [0, -value, value * 2, value / 2, value + 1, value - 1, value * 1.0001, value + 90, value * 25.4];
    put(one.holder, one.key, oneOf(chance, odd) ?? 0);
  },
  function samePlace(_, chance, holders) {
    const places = holders.flatMap((holder) =>
      holder.keys.filter((key) => key === 'at').map((key) => ({ holder, key })),
    );
    const [to, from] = [oneOf(chance, places), oneOf(chance, places)];
    if (to && from) put(to.holder, 'at', copied(Reflect.get(from.holder.value, 'at') as Json));
  },
  function optionalGone(_, chance, holders) {
    const holder = oneOf(
      chance,
      holders.filter(({ keys }) => keys.includes('id')),
    );
    const key =
      holder &&
      oneOf(
        chance,
        holder.keys.filter((each) => !['id', 'kind', 'at'].includes(each)),
      );
    if (holder && key !== undefined) Reflect.deleteProperty(holder.value, key);
  },
  function anotherPart(_, chance, holders) {
    // A wheel on another arbor, a rule of other points: one id in place of another of the same field.
    const fields = ['arbor', 'plate', 'point', 'centre', 'of', 'ridesOn', 'reference', 'wheel'];
    const field = oneOf(chance, fields) ?? 'arbor';
    const having = holders.filter(({ keys }) => keys.includes(field));
    const [to, from] = [oneOf(chance, having), oneOf(chance, having)];
    if (to && from) put(to, field, copied(Reflect.get(from.value, field) as Json));
  },
  function oneMore(_, chance, holders) {
    const lists = holders.filter(({ value }) => Array.isArray(value) && value.some((each) => isItem(each)));
    const list = oneOf(chance, lists)?.value as Json[] | undefined;
    const one = list && oneOf(chance, list);
    if (!list || !isItem(one)) return;
    list.splice(below(chance, list.length + 1), 0, { ...(copied(one) as object), id: `more${below(chance, 1e6)}` });
  },
];

const isItem = (value: Json | undefined): value is { [name: string]: Json } =>
  typeof value === 'object' && value !== null && !Array.isArray(value) && 'id' in value;

/** Changes in the structure; each takes one place of the document. */
const STRUCTURAL: readonly Change[] = [
  function odd(_, chance, holders) {
    const holder = oneOf(chance, holders);
    const key = holder && oneOf(chance, holder.keys);
    if (holder && key !== undefined) put(holder, key, copied(oneOf(chance, ODD) ?? null));
  },
  function gone(_, chance, holders) {
    const holder = oneOf(chance, holders);
    const key = holder && oneOf(chance, holder.keys);
    if (!holder || key === undefined) return;
    if (Array.isArray(holder.value)) holder.value.splice(Number(key), 1);
    else Reflect.deleteProperty(holder.value, key);
  },
  function scaled(_, chance, holders) {
    const numbers = numbersOf(holders);
    const one = oneOf(chance, numbers);
    if (!one) return;
    const factor = oneOf(chance, [-1, 0, 0.5, 0.999, 1.001, 2, 25.4, 1000, 1e9]) ?? 1;
    put(one.holder, one.key, (Reflect.get(one.holder.value, one.key) as number) * factor);
  },
  function renamed(_, chance, holders) {
    const records = holders.filter(({ value }) => !Array.isArray(value));
    const holder = oneOf(chance, records);
    const key = holder && oneOf(chance, holder.keys);
    if (!holder || key === undefined) return;
    put(holder, `${key.slice(0, -1)}${key.slice(-1).toUpperCase()}`, Reflect.get(holder.value, key) as Json);
    Reflect.deleteProperty(holder.value, key);
  },
  function doubled(_, chance, holders) {
    const list = oneOf(
      chance,
      holders.filter(({ value }) => Array.isArray(value)),
    )?.value as Json[] | undefined;
    if (!list || list.length === 0) return;
    const one = copied(list[below(chance, list.length)] ?? null);
    if (chance() < 0.7 && one !== null && typeof one === 'object' && !Array.isArray(one) && 'id' in one) {
      one['id'] = `again${below(chance, 1e6)}`;
    }
    list.splice(below(chance, list.length + 1), 0, one);
  },
  function swapped(_, chance, holders) {
    const [a, b] = [oneOf(chance, holders), oneOf(chance, holders)];
    const [keyA, keyB] = [a && oneOf(chance, a.keys), b && oneOf(chance, b.keys)];
    if (!a || !b || keyA === undefined || keyB === undefined) return;
    const [valueA, valueB] = [copied(Reflect.get(a.value, keyA) as Json), copied(Reflect.get(b.value, keyB) as Json)];
    put(a, keyA, valueB);
    put(b, keyB, valueA);
  },
  function named(_, chance, holders) {
    const texts = holders.flatMap((holder) =>
      holder.keys.filter((key) => typeof Reflect.get(holder.value, key) === 'string').map((key) => ({ holder, key })),
    );
    const [to, from] = [oneOf(chance, texts), oneOf(chance, texts)];
    if (to && from) put(to.holder, to.key, Reflect.get(from.holder.value, from.key) as Json);
  },
  function turned(_, chance, holders) {
    const list = oneOf(
      chance,
      holders.filter(({ value }) => Array.isArray(value)),
    )?.value;
    if (Array.isArray(list)) list.reverse();
  },
  function many(_, chance, holders) {
    const list = oneOf(
      chance,
      holders.filter(({ value }) => Array.isArray(value)),
    )?.value as Json[] | undefined;
    const one = list && list.length > 0 ? list[below(chance, list.length)] : undefined;
    if (!list || one === undefined) return;
    for (let i = 0; i < 300; i++) {
      const more = copied(one);
      if (more !== null && typeof more === 'object' && !Array.isArray(more) && 'id' in more) more['id'] = `m${i}`;
      list.push(more);
    }
  },
];

/** Changes in the text itself. */
const TEXTUAL: readonly ((text: string, chance: Chance) => string)[] = [
  (text, chance) => text.slice(0, below(chance, text.length)),
  (text, chance) => {
    const at = below(chance, text.length);
    return `${text.slice(0, at)}${String.fromCharCode(below(chance, 0x3000))}${text.slice(at + 1)}`;
  },
  (text, chance) => {
    const at = below(chance, text.length);
    return text.slice(0, at) + text.slice(at + 1 + below(chance, 80));
  },
  (text, chance) => {
    const at = below(chance, text.length);
    return text.slice(0, at) + text.slice(at, at + 200).repeat(2) + text.slice(at + 200);
  },
  (text, chance) => text.replaceAll(oneOf(chance, ['0', '1', '.', ',', '"', '}', 'id', 'kind']) ?? '0', ' '),
];

/** The text with one to eight things wrong. Most stay JSON, so that what lies behind the reader is tried as well. */
export function mutated(text: string, seed: number): string {
  const chance = seeded(seed);
  if (chance() < 0.15) return (oneOf(chance, TEXTUAL) ?? String)(text, chance);
  const document = JSON.parse(text) as Json;
  // Half of them only in ways that the reader takes, so that what lies behind it is tried.
  const isMild = chance() < 0.5;
  const rounds = 1 + below(chance, isMild ? 4 : 8);
  for (let i = 0; i < rounds; i++) {
    const change = oneOf(chance, isMild ? MILD : [...MILD, ...STRUCTURAL]);
    change?.(document, chance, holdersOf(document));
  }
  return JSON.stringify(document);
}
