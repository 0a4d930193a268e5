/** A seeded sample of the mutants of a folder. */
import { Instrumenter } from '@stryker-mutator/instrumenter';

/** Faults that a test should notice: signs, comparisons, bounds, steps, and statements that are gone. */
export const KINDS = [
  'ArithmeticOperator',
  'AssignmentOperator',
  'BlockStatement',
  'EqualityOperator',
  'MethodExpression',
  'UnaryOperator',
  'UpdateOperator',
] as const;

/** Numbers from 0 to 1, the same for the same seed (mulberry32, public domain). */
function chanceOf(seed: number): () => number {
  let state = seed | 0;
  return () => {
    state = (state + 0x6d2b79f5) | 0;
    let t = Math.imul(state ^ (state >>> 15), 1 | state);
    t ^= t + Math.imul(t ^ (t >>> 7), 61 | t);
    return ((t ^ (t >>> 14)) >>> 0) / 2 ** 32;
  };
}

/** `count` of the items, in their own order; all where there are no more. */
export function sampleOf<T>(items: readonly T[], count: number, seed: number): readonly T[] {
  const chance = chanceOf(seed);
  const ranked = items.map((item, index) => ({ item, index, rank: chance() }));
  return ranked
    .sort((a, b) => a.rank - b.rank)
    .slice(0, count)
    .sort((a, b) => a.index - b.index)
    .map(({ item }) => item);
}

/**
 * From now on in this process only a sample of the mutants is tried, and only of `KINDS`.
 *
 * The library knows ranges of lines and no samples, so its instrumenter is wrapped: all mutants stand in the code, each
 * behind its switch, but only those of the sample are named to be switched on.
 */
export function trySampleOnly(count: number, seed: number): void {
  const { prototype } = Instrumenter;
  const original = prototype.instrument;
  prototype.instrument = async function instrument(this: Instrumenter, ...given) {
    const whole = await original.apply(this, given);
    const wanted = whole.mutants.filter(({ mutatorName }) => (KINDS as readonly string[]).includes(mutatorName));
    return { ...whole, mutants: [...sampleOf(wanted, count, seed)] };
  };
}
