/** Normal deviates from a seed: the same seed gives the same row on every machine to the last digits that sine allows. */

/** Modulus and multiplier of the minimal standard generator (S. K. Park and K. W. Miller, 1988; multiplier of 1993). */
const MODULUS = 2147483647;
const MULTIPLIER = 48271;

/**
 * A source of normal deviates of mean 0 and standard deviation 1, by G. E. P. Box and M. E. Muller (1958).
 *
 * @param seed any whole number; reduced to 1 … 2³¹ − 2
 */
export function seededNormal(seed: number): () => number {
  let state = (((Math.trunc(seed) % (MODULUS - 1)) + (MODULUS - 1)) % (MODULUS - 1)) + 1;
  const uniform = (): number => {
    state = (state * MULTIPLIER) % MODULUS;
    return state / MODULUS;
  };
  let spare: number | undefined;
  return () => {
    if (spare !== undefined) {
      const value = spare;
      spare = undefined;
      return value;
    }
    const radius = Math.sqrt(-2 * Math.log(uniform()));
    const angle = 2 * Math.PI * uniform();
    spare = radius * Math.sin(angle);
    return radius * Math.cos(angle);
  };
}
