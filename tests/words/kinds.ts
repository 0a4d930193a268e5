/** Outcomes of any kind with any figures, made of the ids of the movement that the words are tried on. */
import fc from 'fast-check';
import { it } from 'vitest';
import type { ArborId, IndicationId, RuleId, WheelId } from '../../solver/movement/ids.ts';
import type { Speaker } from '../../solver/words/index.ts';
import { expectSpoken } from './spoken.ts';

/** Every kind of an outcome, each made anew for each run. */
export type Kinds<Told extends { readonly kind: string }> = {
  readonly [K in Told['kind']]: fc.Arbitrary<Extract<Told, { readonly kind: K }>>;
};

/** One kind: its name, and its fields. The ids are those of the movement; brands are not known to fast-check. */
export function of<Told>(
  kind: string,
  fields: Readonly<Record<string, fc.Arbitrary<unknown>>> = {},
): fc.Arbitrary<Told> {
  return fc.record({ kind: fc.constant(kind), ...fields }) as fc.Arbitrary<Told>;
}

/** Any of a table of kinds. */
export function anyOf<Told extends { readonly kind: string }>(table: Kinds<Told>): fc.Arbitrary<Told> {
  // The table holds the kinds of this outcome and no others.
  return fc.oneof(...(Object.values(table) as fc.Arbitrary<Told>[]));
}

/** Lengths of either sign and above nothing, mm; angles, radians; plain numbers and counts. */
export const mm = fc.double({ min: -400, max: 400, noNaN: true });
export const size = fc.double({ min: 1e-9, max: 170, noNaN: true });
export const radians = fc.double({ min: -7, max: 7, noNaN: true });
export const share = fc.double({ min: 0, max: 1, noNaN: true });
export const count = fc.integer({ min: 1, max: 90 });

/** Any of some ids. */
export function ids<Id>(...all: readonly string[]): fc.Arbitrary<Id> {
  return fc.constantFrom(...all) as fc.Arbitrary<Id>; // the ids of one sort of part
}
export const arbor = ids<ArborId>('zz1', 'zz2', 'zz3');
export const wheel = ids<WheelId>('zz6', 'zz7', 'zz8', 'zz9');
export const rule = ids<RuleId>('zz10', 'zz12', 'zz13');
export const indication = ids<IndicationId>('zz32', 'zz33');
export const several = <T>(each: fc.Arbitrary<T>): fc.Arbitrary<T[]> => fc.array(each, { minLength: 1, maxLength: 3 });
export const two = <T>(each: fc.Arbitrary<T>): fc.Arbitrary<[T, T]> => fc.tuple(each, each);

/** Prints any of an outcome for each of the speakers. */
export function spoken<Told>(
  told: fc.Arbitrary<Told>,
  say: (told: Told, speaker: Speaker) => string,
  speakers: readonly Speaker[],
): void {
  fc.assert(
    fc.property(told, (each) => {
      for (const speaker of speakers) expectSpoken(say(each, speaker), speaker);
    }),
  );
}

/** A test for each kind of a table. */
export function eachKind<Told extends { readonly kind: string }>(
  table: Kinds<Told>,
  say: (told: Told, speaker: Speaker) => string,
  speakers: readonly Speaker[],
): void {
  it.each(Object.entries(table))('%s', (_, told) => spoken(told as fc.Arbitrary<Told>, say, speakers));
}
