/** Chance from a seed, so that the same search gives the same answers. */

/**
 * Numbers in [0, 1) from a 32-bit seed.
 *
 * Source: the "mulberry32" mixer, in the public domain (written from memory): an addition and three multiplications.
 */
export function seededChance(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let mixed = Math.imul(state ^ (state >>> 15), state | 1);
    mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61);
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 4294967296;
  };
}
