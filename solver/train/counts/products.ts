/**
 * Every distinct product of one number from each of several sets, in rising order.
 *
 * Products are marked as bits of a window of numbers and read off in order: no sorting, no doubles. One set's
 * factor is taken at a time, so the marks of a factor run upwards through memory. Windows keep the bits within the
 * processor's cache and the memory small however large the products are.
 */

/** Bits of one window: 2^23, one megabyte, which stays in the second cache of common processors. */
const WINDOW_BITS = 2 ** 23;

/** Numbers gathered without knowing how many there will be. */
class Growing {
  private values = new Float64Array(1024);
  private used = 0;

  push(value: number): void {
    if (this.used === this.values.length) {
      const larger = new Float64Array(this.used * 2);
      larger.set(this.values);
      this.values = larger;
    }
    this.values[this.used] = value;
    this.used++;
  }

  taken(): Float64Array {
    return this.values.subarray(0, this.used);
  }
}

/** Index of the first value not less than `wanted` in a rising list. */
export function lowerBound(values: Float64Array, wanted: number): number {
  let low = 0;
  let high = values.length;
  while (low < high) {
    const middle = (low + high) >>> 1;
    // The index is inside the list by construction.
    if ((values[middle] as number) < wanted) low = middle + 1;
    else high = middle;
  }
  return low;
}

/** Whether a rising list has the number in it. */
export const holds = (values: Float64Array, wanted: number): boolean => values[lowerBound(values, wanted)] === wanted;

/** Marks the products of `list` and `factors` that lie in [low, high] and reads them off in order. */
function multiplied(list: Float64Array, factors: readonly number[], low: number, high: number): Float64Array {
  // Array kernel: indices stay inside their lists by the loop bounds.
  const found = new Growing();
  if (list.length === 0 || factors.length === 0 || high < low) return found.taken();
  const words = Math.ceil((Math.min(WINDOW_BITS, high - low + 1) + 1) / 32);
  const bits = new Uint32Array(words);
  const next = factors.map((factor) => lowerBound(list, Math.ceil(low / factor)));
  for (let start = low; start <= high; start += words * 32) {
    const end = Math.min(high + 1, start + words * 32);
    let marked = 0;
    for (let f = 0; f < factors.length; f++) {
      const factor = factors[f] as number;
      let index = next[f] as number;
      const first = index;
      for (; index < list.length; index++) {
        const product = (list[index] as number) * factor;
        if (product >= end) break;
        const bit = product - start;
        bits[bit >>> 5] = (bits[bit >>> 5] as number) | (1 << (bit & 31));
      }
      marked += index - first;
      next[f] = index;
    }
    if (marked === 0) continue;
    for (let word = 0; word < words; word++) {
      let left = bits[word] as number;
      if (left === 0) continue;
      bits[word] = 0;
      const base = start + word * 32;
      while (left !== 0) {
        const lowest = left & -left;
        found.push(base + 31 - Math.clz32(lowest));
        left ^= lowest;
      }
    }
  }
  return found.taken();
}

/**
 * Distinct products of one member from each set, rising.
 *
 * @param sets whole numbers > 0; products must stay below 2^53
 * @param low, high only products within these limits (inclusive) are given
 */
export function distinctProducts(
  sets: readonly (readonly number[])[],
  low = 1,
  high = Number.MAX_SAFE_INTEGER,
): Float64Array {
  const least = sets.map((set) => Math.min(...set));
  const most = sets.map((set) => Math.max(...set));
  let list: Float64Array = new Float64Array([1]);
  let top = 1;
  let bottom = 1;
  sets.forEach((set, index) => {
    top *= most[index] ?? 1;
    bottom *= least[index] ?? 1;
    // Whatever the later sets bring, a partial product outside these cannot end within the limits.
    const later = (of: readonly number[]): number => of.slice(index + 1).reduce((product, value) => product * value, 1);
    const from = Math.max(bottom, Math.ceil(low / later(most)));
    const to = Math.min(top, Math.floor(high / later(least)));
    list = multiplied(list, set, from, to);
  });
  return list;
}
