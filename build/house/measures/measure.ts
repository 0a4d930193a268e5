/** What a measure of the house is: a figure with the places behind it. */
import type { Sources } from '../sources.ts';

/** One figure of the house. */
export interface Measured {
  /** The figure; a share is in percent. */
  readonly value: number;
  /** Where it comes from, the worst first: `place  what`. */
  readonly places: readonly string[];
}

/** Takes a figure from the sources. */
export type Measure = (sources: Sources) => Measured;

/** A figure that counts its places. */
export const counted = (places: readonly string[]): Measured => ({ value: places.length, places });
